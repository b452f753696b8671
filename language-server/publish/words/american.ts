/** Where the American words differ from the British ones. */
import type { Message, MessageKey } from './british.ts';

export const american: Partial<Record<MessageKey, Message>> = {
  language: 'en-US',
  'do.refit': 'Reinstall {objects}',
  'do.fit': 'Install {objects}',
  'do.fit.kit': 'Install the parts of {objects}: {contents}',
  'do.trial fit': 'Install {objects} on trial',
  'do.bolt up': 'Reinstall {objects} and install {fasteners}',
  'do.bolt up.then': 'Reinstall {objects}, install {fasteners}',
  'do.bolt up.bare': 'Reinstall and fasten {objects}',
  'do.pressurise': 'Pressurize {objects}',
  'do.bypass': 'Jumper {objects}',
  'more.lubricate': 'Before installing, put {lubricant} on {them}.',
  'caution.person':
    'This text helps a trained person; it does not replace training, a risk assessment on the spot, or the judgment of the person who does the work. When something is not as the text says, stop and ask.',
};
