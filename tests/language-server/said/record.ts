/** Writes the record of said.test.ts anew. */
import { writeFileSync } from 'node:fs';
import { CASES, RECORD, said, written } from './cases.ts';

writeFileSync(RECORD, written(CASES.map((one) => ({ name: one.name, lines: said(one) }))));
