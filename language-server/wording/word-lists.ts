/** Words that say nothing, words of another language, and one thing by two names. English. Common practice, no source. */

/** Words in the place of a value or a sign, with what to say instead. */
export const VAGUE: readonly { readonly pattern: RegExp; readonly say: string }[] = [
  {
    pattern: /\b(?:securely|firmly|good and tight|tight enough)\b/i,
    say: 'Give the torque, or say what is felt or seen when it is enough.',
  },
  {
    pattern: /\b(?:as|if|when|where) (?:required|necessary|needed|appropriate)\b/i,
    say: 'Say what decides it: a value, or what the technician sees.',
  },
  {
    pattern: /\b(?:properly|adequately|sufficiently|appropriately|satisfactorily|suitably)\b/i,
    say: 'Say how it is when it is right.',
  },
  {
    pattern: /\b(?:appropriate|suitable|adequate|sufficient)\b/i,
    say: 'Name the one that is meant, or give the value.',
  },
  {
    pattern: /\b(?:with (?:great |due |extreme )?care|carefully)\b/i,
    say: 'Say what can go wrong, and how to avoid it.',
  },
  {
    pattern:
      /\b(?:for a (?:time|while)|(?:for )?a (?:short|little|long) (?:time|while)|(?:for )?some time)\b/i,
    say: 'Give the time, or say what is seen when it is over.',
  },
  {
    pattern: /\b(?:periodically|regularly|from time to time|at intervals|frequently)\b/i,
    say: 'Say how often.',
  },
];

interface Latin {
  readonly pattern: RegExp;
  readonly write?: string;
  readonly say: string;
}

let latinWords: readonly Latin[] | undefined;

/**
 * Latin abbreviations, with what to write: ASD-STE100 rule GR-6 (issue 9 as seen second hand). Made when first asked for:
 * an expression over all letters takes long to make.
 */
export function latin(): readonly Latin[] {
  latinWords ??= [
    { pattern: /(?<![\p{L}.])e\.\s?g\.?(?![\p{L}])/iu, write: 'for example', say: '“for example”' },
    { pattern: /(?<![\p{L}.])i\.\s?e\.?(?![\p{L}])/iu, write: 'that is', say: '“that is”' },
    { pattern: /(?<![\p{L}.])etc\b\.?/iu, say: '“and so on” or, better, all that is meant' },
    { pattern: /(?<![\p{L}.])viz\b\.?/iu, write: 'namely', say: '“namely”' },
    { pattern: /(?<![\p{L}.])cf\./iu, write: 'see', say: '“see”' },
    { pattern: /(?<![\p{L}.])ca\.(?=\s?\d)/iu, write: 'about', say: '“about”' },
    { pattern: /(?<![\p{L}.])n\.\s?b\.?(?![\p{L}])/iu, write: 'note', say: '“note”' },
    { pattern: /(?<![\p{L}.])et al\b\.?/iu, say: '“and others”' },
  ];
  return latinWords;
}

/** Names of one thing that are mixed up in texts from several hands. */
export const SAME_THING: readonly (readonly string[])[] = [
  ['circlip', 'snap ring', 'retaining ring'],
  ['split pin', 'cotter pin'],
  ['grub screw', 'set screw'],
  ['tyre', 'tire'],
  ['petrol', 'gasoline'],
  ['paraffin', 'kerosene'],
  ['gudgeon pin', 'piston pin', 'wrist pin'],
];

/** Most texts have none of these: asked first, in one go. */
export const MAY_BE_VAGUE =
  /\b(?:securely|firmly|tight|required|necessary|needed|appropriate|properly|adequate|sufficient|satisf|suitabl|care|time|while|periodical|regular|interval|frequent)/i;
export const MAY_BE_LATIN = /[ei]\.\s?[ge]|\betc\b|\bviz\b|\bcf\.|\bca\.|n\.\s?b|\bet al\b/i;
