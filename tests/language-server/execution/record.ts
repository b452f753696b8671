/**
 * `npx tsx tests/language-server/execution/record.ts` writes the records of pairs.test.ts and courses.test.ts anew: read
 * what changed in them.
 */
import { writeFileSync } from 'node:fs';
import { COURSE_FILES, written as courseWritten, FOLDER } from './course-files.ts';
import { RECORD, written } from './pairs.ts';

writeFileSync(RECORD, written());
for (const file of COURSE_FILES) writeFileSync(new URL(file, FOLDER), courseWritten(file));
