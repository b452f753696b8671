import type { Check } from '../check.ts';

export const variantUncovered: Check = {
  name: 'variant-uncovered',
  group: 'Flow and measurements',
  severity: 'error',
  title: 'For one variant the job is not finished.',
  explanation: `
What is taken off on every machine must go back on every machine. Where a step stands in a \`when\` block, the variants
that the block leaves out have to be served by another one. The checker follows all variants at once and names the
smallest combination for which something is missing.

Write the step for the variant that is left out, or take it out of the \`when\` block.`,
  source: 'case 31: left and right assemblies that are not the same; common practice, no source',
  bad: `
machine winder "hose winder" {
  variant drive: motor, crank
  part frame "frame" fixed
  part side-plate "side plate" on frame held by plate-screws
  fastener plate-screws "plate screws" x4
}
procedure grease "Grease the winder" for winder {
  unbolt side-plate
         ^^^^^^^^^^
  when drive is motor { bolt up side-plate }
}
`,
  good: `
machine winder "hose winder" {
  variant drive: motor, crank
  part frame "frame" fixed
  part side-plate "side plate" on frame held by plate-screws
  fastener plate-screws "plate screws" x4
}
procedure grease "Grease the winder" for winder {
  unbolt side-plate
  clean frame
  bolt up side-plate
}
`,
  says: (fact) => ({
    message: fact.words!.inner!,
    help: 'Only this variant lacks the step: write it for that variant too.',
  }),
};
