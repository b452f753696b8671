import type { Check } from '../check.ts';
import { apartFromItself, CAUTION, DEFER, others, subject, them, typedOthers } from '../speak.ts';

export const notProvedSafe: Check = {
  name: 'not-proved-safe',
  group: 'Hazards',
  severity: 'warning',
  title: 'A system that was made safe is opened before anybody proved it.',
  explanation: `
A breaker can be the wrong one, a gauge can stick and a capacitor can stay charged. Where the machine file says how a
system is proved (\`proved with\`), the checker asks for a \`prove … safe\` step between making it safe and opening it. What
brings the energy back, such as a run, asks for a new proof.

Write \`prove … safe with …\` before this step. ${CAUTION}`,
  source: '29 CFR 1910.147 (d) (6): verify isolation before work starts',
  bad: `
machine heater "space heater" {
  part case "case" fixed
  part element "heating element" on case opens mains
  isolator breaker "breaker" in mains normally on
  tool tester "two-pole tester"
  system mains "mains supply" live 230 V isolated at breaker proved with tester
}
procedure renew-element "Renew the heating element" for heater supplies element {
  isolate mains
  remove element and discard
         ^^^^^^^
  fit new element
  restore mains
}
`,
  good: `
machine heater "space heater" {
  part case "case" fixed
  part element "heating element" on case opens mains
  isolator breaker "breaker" in mains normally on
  tool tester "two-pole tester"
  system mains "mains supply" live 230 V isolated at breaker proved with tester
}
procedure renew-element "Renew the heating element" for heater tools tester supplies element {
  isolate mains
  prove mains safe with tester
  remove element and discard
  fit new element
  restore mains
}
`,
  says: (fact) => {
    const systems = apartFromItself(fact);
    const tools = systems.others.flatMap(({ thing }) =>
      thing.declaration.clauses.flatMap((clause) =>
        clause.clause === 'proved with' ? clause.refs.map((ref) => ref.name.text) : [],
      ),
    );
    const withTools = tools.length === 0 ? '' : ` with ${tools.join(', ')}`;
    return {
      message: `This step opens ${others(systems)} at ${subject(fact)}, and nobody has proved ${them(systems, 'others')} safe.`,
      help: `Write \`prove ${typedOthers(systems)} safe${withTools}\` before this step. ${DEFER}`,
    };
  },
};
