/**
 * Which picture paths are taken. Schemes after RFC 3986 section 3.1 (a letter, then letters, digits, `+`, `-`, `.`,
 * then a colon); paths of other computers after the Windows naming of shared folders (from memory).
 */
import { expect, test } from 'vitest';
import { pathFault, plainPath } from '../../../language-server/model/picture-paths.ts';

test.each(['ram.png', 'pictures/ram.png', './pictures/ram 1.png', 'bilder/Kolben-ä.webp', 'a..b/c...png'])(
  '%s may be taken',
  (path) => expect(pathFault(path)).toBeUndefined(),
);

test.each([
  ['../ram.png', /outside/],
  ['pictures/../../ram.png', /outside/],
  ['pictures/..', /outside/],
  ['/etc/hostname', /top of a disk/],
  ['~/ram.png', /top of a disk/],
  ['C:/ram.png', /top of a disk/],
  ['c:\\ram.png', /top of a disk/],
  ['\\ram.png', /top of a disk/],
  ['//server/ram.png', /another computer/],
  ['\\\\server\\share\\ram.png', /another computer/],
  ['pictures\\ram.png', /backslashes/],
  ['..\\ram.png', /backslashes/],
  ['http://example.com/ram.png', /address/],
  ['HTTPS://example.com/ram.png', /address/],
  ['file:///ram.png', /address/],
  ['file:ram.png', /address/],
  ['javascript:alert(1)', /address/],
  ['data:image/png;base64,AAAA', /address/],
  ['view-source:ram.png', /address/],
  ['', /no path/],
  ['  ', /no path/],
  ['ram\u0000.png', /control/],
  ['java\nscript:x', /control/],
])('%j is not', (path, why) => expect(pathFault(path)).toMatch(why));

test('one picture has one name', () => {
  expect(plainPath('./a//b/./c.png')).toBe('a/b/c.png');
});
