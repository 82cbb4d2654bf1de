/** A tube on its way through the cold: liquid that boils to gas, drawn as the bench draws it. Ornament, says nothing. */

const ROWS = 4;
const WIDTH = 320;
const PITCH = 34;
const LEFT = 34;
const RIGHT = WIDTH - LEFT;
/** Distance between two marks in the tube. */
const SPACING = 21;

/** To and fro from the lower left to the upper right, as a coil is laid. */
const tube = Array.from({ length: ROWS }, (_, row) => {
  const y = 24 + PITCH * (ROWS - 1 - row);
  const [from, to] = row % 2 === 0 ? [LEFT, RIGHT] : [RIGHT, LEFT];
  const turn = row % 2 === 0 ? 1 : 0;
  const bend = row < ROWS - 1 ? `A${PITCH / 2} ${PITCH / 2} 0 0 ${turn ? 0 : 1} ${to} ${y - PITCH}` : '';
  return `${row === 0 ? `M${from} ${y}` : ''}H${to}${bend}`;
}).join('');

const marks = Array.from({ length: ROWS }, (_, row) => {
  const y = 24 + PITCH * (ROWS - 1 - row);
  const count = Math.floor((RIGHT - LEFT) / SPACING);
  return Array.from({ length: count }, (_mark, i) => {
    const along = row % 2 === 0 ? i : count - 1 - i;
    const order = row * count + along;
    // Ever fewer drops among the bubbles; the last row is gas alone.
    const isGas = row === ROWS - 1 || (order * 7) % (ROWS * count - order) < order / 3;
    return { key: `${row}/${i}`, x: LEFT + SPACING * (i + 0.5), y, isGas };
  });
}).flat();

export function Emblem() {
  return (
    <svg class="emblem" viewBox={`0 0 ${WIDTH} ${PITCH * (ROWS - 1) + 48}`} aria-hidden="true">
      {Array.from({ length: 30 }, (_, i) => (
        <line
          key={i}
          x1={LEFT + 4 + i * 8.4}
          x2={LEFT + 4 + i * 8.4}
          y1={6}
          y2={PITCH * (ROWS - 1) + 42}
          class="emblem-fin"
        />
      ))}
      <path d={tube} class="emblem-edge" />
      <path d={tube} class="emblem-tube" />
      {marks.map(({ key, x, y, isGas }) => (
        <circle key={key} cx={x} cy={y} r={isGas ? 4 : 4.5} class={isGas ? 'emblem-gas' : 'emblem-liquid'} />
      ))}
    </svg>
  );
}
