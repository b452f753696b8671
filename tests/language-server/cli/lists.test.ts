/** `dowel lists`: what it prints for a job that is small enough to be counted by hand. */
import { expect, test } from 'vitest';
import { dowel, folderWith } from './dowel.ts';

const JOB = `machine m "pump" {
  part body "body" fixed
  part cover "cover" on body
  seal ring "ring, 40 mm" x2 on body  single-use  part number "R-40"
  tool gauge "depth gauge"
}

procedure p "Renew the rings"
  for m
  people 1  time 1 h
  tools gauge
{
  wait 15 min
  fit new ring
}
`;

test('a table says none where nothing is needed', () => {
  const { code, out } = dowel(['lists', 'a.dowel'], { cwd: folderWith({ 'a.dowel': JOB }) });
  expect(code).toBe(0);
  expect(out).toBe(`Renew the rings

People
  1

Time
  1 h     as stated
  45 min  Working
  15 min  Waiting

Before you begin: none

Wear: none

Tools
          depth gauge

New parts
  2       ring, 40 mm (R-40)

Kits: none

Fluids: none

Consumables: none


Laws, local codes, permits and the rules of the site come before this text. Where they ask for more, do more; where they forbid something, do not do it.
`);
});

// RFC 4180: lines end in CR LF; a field with a comma stands in quotation marks.
test('CSV', () => {
  const { out } = dowel(['lists', 'a.dowel', '--format', 'csv'], { cwd: folderWith({ 'a.dowel': JOB }) });
  const lines = out.split('\r\n');
  expect(lines[0]).toBe('procedure,list,id,amount,name,number,remark,when');
  expect(lines).toContain('p,parts,ring,2,"ring, 40 mm",R-40,,');
  expect(lines).toContain('p,kits,,0,none,,,');
});

test('JSON has the lists by name', () => {
  const { out } = dowel(['lists', 'a.dowel', '--format', 'json'], { cwd: folderWith({ 'a.dowel': JOB }) });
  expect(JSON.parse(out)).toMatchObject({
    version: 1,
    procedures: [
      { id: 'p', lists: { people: 1, kits: [], newParts: [{ id: 'ring', count: 2, partNumber: 'R-40' }] } },
    ],
  });
});

test('words and units are those of the house', () => {
  const folder = folderWith({
    'a.dowel': JOB,
    'dowel.config.json': '{ "units": "metric", "words": "american" }',
  });
  expect(dowel(['lists', 'a.dowel'], { cwd: folder }).code).toBe(0);
});

test('what cannot be listed: exit code 2 and a remedy', () => {
  const folder = folderWith({ 'a.dowel': 'machine m "pump" { part body "body" fixed }\n' });
  const gone = dowel(['lists', 'gone.dowel'], { cwd: folder });
  expect([gone.code, gone.out]).toEqual([2, '']);
  expect(gone.err).toContain('cannot read gone.dowel: no such file or folder.');
  const none = dowel(['lists', 'a.dowel'], { cwd: folder });
  expect([none.code, none.out]).toEqual([2, '']);
  expect(none.err).toContain('a.dowel has no procedure');
});
