import { useState } from 'preact/hooks';
import { Tabs } from '../kit/Tabs';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { Strand } from '../strand/Strand';
import { Controls } from './Controls';
import { Rooms } from './Rooms';

type Leaf = 'controls' | 'rooms' | 'strand';

export function MachineSheet() {
  const text = useText();
  const session = useSession();
  const [leaf, setLeaf] = useState<Leaf>('controls');
  if (!session.plant.dataLink) return <Controls />;
  return (
    <Tabs
      label={text.t('panels.sheet.machine')}
      open={leaf}
      onOpen={setLeaf}
      tabs={[
        ['controls', text.t('panels.machine.controls')],
        ...(session.plant.units ? [['rooms', text.t('panels.machine.rooms')] as const] : []),
        ['strand', text.t('panels.machine.strand')],
      ]}
    >
      {leaf === 'controls' && <Controls />}
      {leaf === 'rooms' && <Rooms />}
      {leaf === 'strand' && <Strand />}
    </Tabs>
  );
}
