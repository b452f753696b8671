/** Samples as editors have them: a field is `$`, and in braces its number, a colon and its usual text, and may stand in several places. */

/** The sample with other usual text in one of its fields. What would end the field is left out of it. */
export function withField(sample: string, field: number, text: string): string {
  const usual = text.replace(/[\\$}]/g, '');
  return sample.replace(new RegExp(`(?<=\\$\\{${field}:)[^}]*`, 'g'), () => usual);
}
