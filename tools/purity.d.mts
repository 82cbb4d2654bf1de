export function impurities(path: string, sourceText?: string): { line: number; text: string }[];
