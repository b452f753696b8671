/** `npm run -s reference`: writes anew what is made from data: the tables of the reference, the JSON Schema. */
import { writeFileSync } from 'node:fs';
import { schemaText } from '../../language-server/config/schema.ts';
import { writeSchema } from '../language-server/publish/json/write-schema.ts';
import { REFERENCE, textOf } from './examples.ts';
import { withTables } from './tables.ts';

const write = (path: string, text: string) => writeFileSync(new URL(`../../${path}`, import.meta.url), text);

write(REFERENCE, withTables(textOf(REFERENCE)));
write('extension/schemas/dowel.config.schema.json', schemaText());
writeSchema();
