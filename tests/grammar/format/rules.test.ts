/**
 * Each rule of the layout of blanks, empty lines and comments by a small text before and after. The layout is the project's own, stated in words in
 * grammar/format/format.ts; there is no source outside for it.
 */
import { describe, expect, test } from 'vitest';
import { expectLayoutHolds } from './holds.ts';
import { expectLayout } from './laid-out.ts';

describe('blanks', () => {
  test('two spaces for each brace, one statement a line', () => {
    expectLayout(
      `
      procedure p "P" for m { task a "A" { remove b
      remove c } }
      `,
      `
      procedure p "P" for m {
        task a "A" {
          remove b
          remove c
        }
      }
      `,
    );
  });

  test('one space between words and behind commas, none before commas and colons', () => {
    expectLayout(
      `
      machine m {
        variant   supply :single ,   double
        coupled a ,b,c   while   a  fitted
      }
      `,
      `
      machine m {
        variant supply: single, double
        coupled a, b, c while a fitted
      }
      `,
    );
  });

  test('signs stand free, ranges and brackets close up, units stay as typed', () => {
    expectLayout(
      `
      machine m {
        value a = ( b+2 mm )/3
        value c=b -d
        tool t range 5 .. 60 N·m
        fastener f torque 25±3 N·m
        fastener g torque 80 lbf·ft(110N·m)
        fastener h torque 25 +- 3 N.m
        fastener i plan { 90°; 90 ° }
      }
      `,
      `
      machine m {
        value a = (b + 2 mm) / 3
        value c = b - d
        tool t range 5..60 N·m
        fastener f torque 25 ± 3 N·m
        fastener g torque 80 lbf·ft (110N·m)
        fastener h torque 25 +- 3 N.m
        fastener i plan { 90°; 90 ° }
      }
      `,
    );
  });

  test('quoted text is not touched', () => {
    expectLayout(
      `
      procedure p   "a  ,b{ c }  "{
        stop   "x  //  y ;  z"   "  again"
      }
      `,
      `
      procedure p "a  ,b{ c }  " {
        stop "x  //  y ;  z" "  again"
      }
      `,
    );
  });

  test('blanks that hold two words apart stay on their line', () => {
    // With one space, "in" would begin "in order" and would be the inch no longer.
    const far = 'in                           order';
    expectLayout(
      `
      machine m {
          fastener f length 5 ${far} across
          part   b
      }
      `,
      `
      machine m {
          fastener f length 5 ${far} across
        part b
      }
      `,
    );
  });

  test('an empty text stays empty, blanks alone are dropped', () => {
    expect(expectLayoutHolds('')).toBe('');
    expect(expectLayoutHolds('\uFEFF \r\n\t\n')).toBe('');
  });
});

describe('empty lines', () => {
  test('none inside braces at the ends, one at most between statements, none inside a statement', () => {
    expectLayout(
      `
      procedure p {


        remove a



        remove b
        remove c with d

          "Carefully."

      }
      `,
      `
      procedure p {
        remove a

        remove b
        remove c with d
          "Carefully."
      }
      `,
    );
  });

  test('one around machines, procedures and tasks; lists of uses and of shared things stay close', () => {
    expectLayout(
      `
      use "a.dowel"
      use "b.dowel"
      fluid oil
      fluid water
      machine m { part a }
      procedure p {
        remove a
        task b { remove c }
        task d { remove e }
        remove f
      }
      procedure q { remove a }
      `,
      `
      use "a.dowel"
      use "b.dowel"

      fluid oil
      fluid water

      machine m {
        part a
      }

      procedure p {
        remove a

        task b { remove c }

        task d { remove e }

        remove f
      }

      procedure q {
        remove a
      }
      `,
    );
  });
});

describe('comments', () => {
  test('keep their line, and stand in the column of what follows', () => {
    expectLayout(
      `
      // of the file


          // of the machine
      machine m {// behind the brace

      // of the part
          part a// behind the part
              on b // behind the clause
            // of the next clause
              fixed

        // at the end

      }
      // after all
      `,
      `
      // of the file

      // of the machine
      machine m {  // behind the brace
        // of the part
        part a  // behind the part
          on b  // behind the clause
          // of the next clause
          fixed

        // at the end
      }
      // after all
      `,
    );
  });

  test('keep apart what would stand together', () => {
    expectLayout(
      `
      procedure p {
        task a // why
        {
          when b is c { // first
            remove d } // second
          otherwise { remove e /* no comment */ }
        }
      }
      `.replace(' /* no comment */', ''),
      `
      procedure p {
        task a  // why
        {
          when b is c {  // first
            remove d
          }  // second
          otherwise {
            remove e
          }
        }
      }
      `,
    );
  });

  test('an empty line before a task goes before its comment', () => {
    expectLayout(
      `
      procedure p {
        task a { remove b }
        // about c
        task c { remove d }
        // about e

        task e { remove f } // done
        // the end
      }
      `,
      `
      procedure p {
        task a { remove b }

        // about c
        task c { remove d }
        // about e

        task e { remove f }  // done
        // the end
      }
      `,
    );
  });

  test('in an otherwise empty block they open it', () => {
    expectLayout(
      `
      procedure p {
        task a { // later
        }
        task b {
      // later still
      } }
      `,
      `
      procedure p {
        task a {  // later
        }

        task b {
          // later still
        }
      }
      `,
    );
  });
});

describe('text that could not be read', () => {
  test('a line with a slip stays byte for byte, the others are laid out', () => {
    expectLayout(
      `
      procedure p {
      remov   a ,b
      remove   c ,d
      wait   10
          task e {
        remove   f
      } }
      `,
      `
      procedure p {
      remov   a ,b
        remove c, d
      wait   10

        task e {
          remove f
        }
      }
      `,
    );
  });

  test('a declaration or head with a slip stays as a whole', () => {
    expectLayout(
      `
      machine m {
         part a
             on   b
           thikness   3 mm
             under   c
         part   d
      }
      procedure p
           for   m
           zzz   1
      {
           remove   a
      }
      `,
      `
      machine m {
         part a
             on   b
           thikness   3 mm
             under   c
        part d
      }

      procedure p
           for   m
           zzz   1
      {
        remove a
      }
      `,
    );
  });

  test('with a brace missing the whole item stays, the others are laid out', () => {
    expectLayout(
      `
      machine m {
          part   a
      }
      procedure p {
          task a {
             remove   b
      `,
      `
      machine m {
        part a
      }

      procedure p {
          task a {
             remove   b
      `,
    );
  });

  test('line ends become LF there too, blanks at their ends stay', () => {
    expect(expectLayoutHolds('procedure p {\r\n\tremov  a \t\r\n\tremove  b \t\r\n}\r\n')).toBe(
      'procedure p {\n\tremov  a \t\n  remove b\n}\n',
    );
  });

  test('beyond the problems that the parser lists everything stays', () => {
    const slips = '  remov   a\n'.repeat(120);
    const text = `procedure p {\n remove   a\n${slips} remove   z\n}\n`;
    expect(expectLayoutHolds(text)).toBe(`procedure p {\n  remove a\n${slips} remove   z\n}\n`);
  });
});
