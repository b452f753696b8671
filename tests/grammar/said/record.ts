/** Writes the record of said.test.ts anew: read the difference. */
import { writeFileSync } from 'node:fs';
import { RECORD, written } from './said.ts';
import { TEXTS } from './texts.ts';

writeFileSync(RECORD, `${TEXTS.map(written).join('\n\n')}\n`);
