/** Writes `extension/l10n/bundle.l10n.json` anew: `npx tsx tests/editor/write-l10n.ts`. */
import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { sentencesOf } from './l10n.ts';

const folder = resolve(import.meta.dirname, '../../extension');
const bundle = Object.fromEntries(sentencesOf(folder).map((sentence) => [sentence, sentence]));
writeFileSync(join(folder, 'l10n/bundle.l10n.json'), `${JSON.stringify(bundle, null, 2)}\n`);
