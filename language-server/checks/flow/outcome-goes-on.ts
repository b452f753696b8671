import type { Check } from '../check.ts';

export const outcomeGoesOn: Check = {
  name: 'outcome-goes-on',
  group: 'Flow and measurements',
  severity: 'warning',
  title: 'After a bad finding somebody looks further, and the job goes on as if it were good.',
  explanation: `
“If the vacuum does not hold, look for the leak.” And then? The outcome only looks; nothing in it mends, ends the work or
leads back to the test, so that the next step is done on a system that leaks. A failed test needs a way back: the test is
done again, or the work stops there.

Write what is done with what is found, put the test in a \`repeat … until\`, or end the outcome with \`stop\`. Silent where a
sentence stands with the look, where its value has a name, inside a repeat, and where the step after the outcomes asks for
what was found.`,
  source:
    'US Army TM 10-8145-222-23, WP 0014: after a vacuum that does not hold a leak check, and no word of where to go on (case 18)',
  bad: `
machine cooler "cooler" {
  system gas "refrigerant" pressure 3 bar
  part line "line" fixed in gas
}
procedure test-line "Test the line" for cooler {
  check gas {
    holds { }
    falls {
      inspect line for "leaks"
      ^^^^^^^^^^^^^^^^^^^^^^^^
    }
  }
  run
}
`,
  good: `
machine cooler "cooler" {
  system gas "refrigerant" pressure 3 bar
  part line "line" fixed in gas
}
procedure test-line "Test the line" for cooler {
  check gas {
    holds { }
    falls {
      inspect line for "leaks" { found { } none { } }
      stop "Mend the leak and do this test again."
    }
  }
  run
}
`,
  says: ({ words = {} }) => ({
    message: `${words.outcome ? `In the outcome \`${words.outcome}\`` : 'In this outcome'} somebody only looks, and the job goes on as after the others.`,
    help: 'Write what is done then: mend it and test again (`repeat … until`), or `stop`.',
  }),
};
