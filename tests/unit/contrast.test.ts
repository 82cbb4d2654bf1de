import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

// WCAG 2.2, 1.4.3 (text 4.5 : 1) and 1.4.11 (borders of controls and what a drawing is made of, 3 : 1).

const css = readFileSync(new URL('../../src/styles/tokens.css', import.meta.url), 'utf8');

function themeOf(selector: string): Map<string, string> {
  const block = css.slice(css.indexOf(selector)).match(/\{([^}]*)\}/)?.[1] ?? '';
  return new Map([...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/gi)].map(([, name, hex]) => [name!, hex!]));
}

function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

const TEXT = [
  ['ink', 'paper'],
  ['ink', 'sheet'],
  ['ink', 'accent-soft'],
  ['ink', 'caution-soft'],
  ['ink-soft', 'paper'],
  ['ink-soft', 'sheet'],
  ['ink-soft', 'accent-soft'],
  ['accent', 'paper'],
  ['accent', 'sheet'],
  ['on-accent', 'accent'],
  ['caution', 'caution-soft'],
  ['caution', 'sheet'],
] as const;
const SHAPES = [
  ['edge', 'paper'],
  ['edge', 'sheet'],
  ['accent', 'paper'],
  ['accent', 'sheet'],
] as const;

describe.each([
  ['paper', ':root {'],
  ['night', ':root[data-theme="night"]'],
])('%s', (_name, selector) => {
  const colours = themeOf(selector);

  test.each(TEXT)('text %s on %s reads at 4.5 to 1 or better', (text, ground) => {
    expect(contrast(colours.get(text)!, colours.get(ground)!)).toBeGreaterThanOrEqual(4.5);
  });

  test.each(SHAPES)('%s on %s is seen at 3 to 1 or better', (line, ground) => {
    expect(contrast(colours.get(line)!, colours.get(ground)!)).toBeGreaterThanOrEqual(3);
  });
});

test('the measure knows black on white', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
});
