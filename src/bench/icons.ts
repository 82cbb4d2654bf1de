/** Signs on the places: what kind of thing can be put there. Strokes in a 24 × 24 square. */
import type { PlaceKind } from '../../physics/types';

const SVG = 'http://www.w3.org/2000/svg';

const STROKES: Record<PlaceKind, string> = {
  // a valve core in its stub
  port: 'M12 5v5 M7 10h10v4a5 5 0 0 1-10 0z M12 19v1',
  // a clamp round a pipe
  pipe: 'M8 12a4 4 0 1 0 8 0a4 4 0 1 0 -8 0 M5 7.5a8.4 8.4 0 0 0 0 9 M19 7.5a8.4 8.4 0 0 1 0 9',
  // three streams
  air: 'M4 8c3-3 5 3 8 0s5 3 8 0 M4 13c3-3 5 3 8 0s5 3 8 0 M4 18c3-3 5 3 8 0s5 3 8 0',
  // a lead through a jaw
  wire: 'M4 12h16 M8.5 6.5a7 7 0 1 0 7 0',
  // two screws
  terminals: 'M4.5 12a3 3 0 1 0 6 0a3 3 0 1 0 -6 0 M13.5 12a3 3 0 1 0 6 0a3 3 0 1 0 -6 0',
  // a tap on either side of a sheet
  duct: 'M12 4v16 M5 9h3v6H5 M19 9h-3v6h3',
  // an eye
  look: 'M3 12c4-6.5 14-6.5 18 0c-4 6.5-14 6.5-18 0z M9.5 12a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0',
  // a plug
  panel: 'M9 4v5 M15 4v5 M6.5 9h11v3a5.5 5.5 0 0 1-11 0z M12 17.5V21',
};

export function placeIcon(kind: PlaceKind): SVGSVGElement {
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('viewBox', '0 0 24 24');
  svg.setAttribute('aria-hidden', 'true');
  const path = document.createElementNS(SVG, 'path');
  path.setAttribute('d', STROKES[kind]);
  svg.append(path);
  return svg;
}
