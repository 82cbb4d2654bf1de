/** The one reading that tells: what either cause gives, as two bands, and the dot that was read. */
import type { Picture } from '../../examiner/types';
import { Bands } from '../kit/Bands';
import { useSession } from '../session';

export function BandPicture({ picture }: { readonly picture: Picture }) {
  const { atmosphere } = useSession().state.value.site;
  return <Bands bands={picture.bands} read={picture.read} kind={picture.kind} atmosphere={atmosphere} />;
}
