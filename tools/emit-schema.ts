// Writes scenarios/pack.schema.json from the schema that validates packs. A test fails when the two differ.
import { writeFileSync } from 'node:fs';
import { packJsonSchema } from '../src/attempt/pack/schema';

const path = new URL('../scenarios/pack.schema.json', import.meta.url);
writeFileSync(path, `${JSON.stringify(packJsonSchema(), null, 2)}\n`);
console.log('wrote scenarios/pack.schema.json');
