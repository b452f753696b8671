/** `npx tsx tests/language-server/execution/record.ts` writes the record of pairs.test.ts anew: read what changed in it. */
import { writeFileSync } from 'node:fs';
import { RECORD, written } from './pairs.ts';

writeFileSync(RECORD, written());
