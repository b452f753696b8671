/** `npm run -s reference`: writes the tables of the reference anew. */
import { writeFileSync } from 'node:fs';
import { REFERENCE, textOf } from './examples.ts';
import { withTables } from './tables.ts';

writeFileSync(new URL(`../../${REFERENCE}`, import.meta.url), withTables(textOf(REFERENCE)));
