export function layerOf(path: string): string;
export function objection(file: string, specifier: string): string | null;
