/**
 * Long procedures in one piece that are edited line by line: what is found is what a check from scratch finds.
 * `DOWEL_LONG=1` makes twenty times as many edits.
 */
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { Engine } from '../../../language-server/engine/engine.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import { lineEdit, longJob } from './long-jobs.ts';
import { applied, numbersFrom } from './random-edits.ts';

const SEEDS = process.env.DOWEL_LONG === '1' ? 200 : 10;
const EDITS = 40;
/** So many edits go by before the text is put back to what it was. */
const ROW = 10;

describe('a long procedure that is edited', () => {
  test.each(Array.from({ length: SEEDS }, (_, seed) => seed + 1))(
    'is checked as from scratch (seed %i)',
    { timeout: 300_000 },
    (seed) => {
      const next = numbersFrom(seed);
      const start = longJob(next, 60);
      let text = start;
      const engine = new Engine(memoryHost({}));
      engine.put('job.dowel', text);
      engine.check('job.dowel');
      for (let turn = 0; turn < EDITS; turn++) {
        if (turn % ROW === ROW - 1) {
          text = start;
          engine.put('job.dowel', text);
        }
        const edit = lineEdit(text, next);
        text = applied(text, edit);
        engine.edit('job.dowel', edit.start, edit.end, edit.text);
        const found = engine.plain(engine.check('job.dowel'));
        const scratch = checkProject(memoryHost({ 'job.dowel': text }), ['job.dowel']).findings;
        expect({ turn, edit, found }).toEqual({ turn, edit, found: scratch });
      }
    },
  );
});
