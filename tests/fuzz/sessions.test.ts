/** Sessions of an editor by chance, and what such sessions once broke. */
import { expect, it } from 'vitest';
import { editor } from '../language-server/server/client.ts';
import { session } from './broken-session.ts';

it('40 sessions from seed 1', { timeout: 1_200_000 }, async () => {
  const wrong: string[] = [];
  for (let seed = 1; seed <= 40; seed++) {
    const said = await session(seed);
    if (said !== undefined) wrong.push(`seed ${seed}: ${said}`);
  }
  expect(wrong).toEqual([]);
});

// Found by sessions: half of a sign of two halves, of which no address can be made, ended the server.
it.each(['\ud800.dowel', 'http://[', 'file://%zz/a.dowel'])('a `use` of %j leads nowhere', async (target) => {
  const one = await editor({ 'a.dowel': `use "${target}"\n` });
  const found = await one.diagnostics('a.dowel', (all) => all.length > 0);
  expect(found.map(({ code }) => code)).toContain('file-missing');
  await one.close();
});
