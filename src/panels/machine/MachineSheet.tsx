import { useState } from 'preact/hooks';
import { Tabs } from '../kit/Tabs';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { Strand } from '../strand/Strand';
import { Controls } from './Controls';

export function MachineSheet() {
  const text = useText();
  const session = useSession();
  const [leaf, setLeaf] = useState<'controls' | 'strand'>('controls');
  if (!session.plant.dataLink) return <Controls />;
  return (
    <Tabs
      label={text.t('panels.sheet.machine')}
      open={leaf}
      onOpen={setLeaf}
      tabs={[
        ['controls', text.t('panels.machine.controls')],
        ['strand', text.t('panels.machine.strand')],
      ]}
    >
      {leaf === 'controls' ? <Controls /> : <Strand />}
    </Tabs>
  );
}
