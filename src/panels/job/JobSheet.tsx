import { useState } from 'preact/hooks';
import { Tabs } from '../kit/Tabs';
import { useText } from '../kit/text';
import { Safety } from './Safety';
import { Survey } from './Survey';
import { WorkOrder } from './WorkOrder';

type Leaf = 'order' | 'look' | 'safe';

export function JobSheet() {
  const text = useText();
  const [leaf, setLeaf] = useState<Leaf>('order');
  return (
    <Tabs
      label={text.t('panels.sheet.job')}
      open={leaf}
      onOpen={setLeaf}
      tabs={[
        ['order', text.t('panels.job.order')],
        ['look', text.t('panels.job.look')],
        ['safe', text.t('panels.job.safe')],
      ]}
    >
      {leaf === 'order' && <WorkOrder />}
      {leaf === 'look' && <Survey />}
      {leaf === 'safe' && <Safety />}
    </Tabs>
  );
}
