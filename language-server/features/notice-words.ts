/**
 * A first sentence for a notice about a hazard: what it does to people, and how to avoid it. A beginning for
 * the author, who knows the machine; local safety rules and licensed practice come first. The wording is common
 * practice, no source.
 */
const SENTENCES: Readonly<Record<string, (what: string) => string>> = {
  pressure: (what) =>
    `Pressure in the ${what} throws out parts and grit, which injure eyes and skin. Stand to one side and wear eye protection.`,
  hot: (what) => `The ${what} is hot and burns the skin. Wear gloves.`,
  cold: (what) => `The ${what} is cold enough to burn the skin. Wear gloves.`,
  live: (what) =>
    `Voltage in the ${what} kills. Work only on a supply that is locked out and proved dead, and follow the local rules.`,
  'stored-energy': (what) =>
    `Energy stored in the ${what} can strike without warning. Keep clear of its path.`,
  fuel: (what) => `Fuel from the ${what} catches fire. Keep flames and sparks away.`,
  chemical: (what) => `The ${what} harms skin and eyes. Wear gloves and eye protection.`,
  lifting: (what) => `The ${what} is heavy and crushes hands and feet. Keep clear of it while it hangs.`,
  moving: (what) => `The ${what} catches and crushes fingers when it moves. Keep your hands away from it.`,
  sharp: (what) => `The edges of the ${what} cut. Wear gloves.`,
  dust: (what) => `Dust from the ${what} harms the lungs. Wear a mask.`,
  noise: (what) => `Noise of the ${what} harms the hearing. Wear ear protection.`,
  light: (what) => `Light from the ${what} harms the eyes. Wear eye protection.`,
  falling: (what) => `The ${what} can fall and injure people. Keep clear of the space below it.`,
};

/** The sentence about a hazard of a thing that is called `what`; undefined for a word that is no hazard. */
export function noticeSentence(hazard: string, what: string): string | undefined {
  return SENTENCES[hazard]?.(what.replaceAll('"', ''));
}
