/** Spearman's rank correlation, -1 to 1; equal values share the mean of their ranks. */
export function rankCorrelation(a: readonly number[], b: readonly number[]): number {
  return correlation(ranks(a), ranks(b));
}

function ranks(values: readonly number[]): number[] {
  return values.map((value) => {
    const below = values.filter((each) => each < value).length;
    const equal = values.filter((each) => each === value).length;
    return below + (equal - 1) / 2;
  });
}

function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / list.length;
  const [ma, mb] = [mean(a), mean(b)];
  const sum = (each: (i: number) => number) => a.reduce((total, _, i) => total + each(i), 0);
  const spread = sum((i) => (a[i] - ma) ** 2) * sum((i) => (b[i] - mb) ** 2);
  return spread > 0 ? sum((i) => (a[i] - ma) * (b[i] - mb)) / Math.sqrt(spread) : 0;
}
