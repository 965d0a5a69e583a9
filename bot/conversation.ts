import { cropFamilies, cropRows, nightSpan } from '../engine/index.js';
import { answerCrop } from './features/crop/answer-crop.js';
import { logDeeds } from './features/done/log-deeds.js';
import { cropName, issueAdvisory, type EveningPorts, type EveningSubject } from './features/evening/issue-advisory.js';
import { pastControls } from './features/evening/past-controls.js';
import { answerCropAhead, answerOutlook, weekOf } from './features/outlook/answer-outlook.js';
import type { Week } from './features/outlook/week.js';
import { fixReading, logReadings } from './features/reading/log-reading.js';
import type { CropWord } from './language/crop-word.js';
import type { Intent } from './language/intent.js';
import { understand } from './language/understand.js';
import { NoWeatherError, type IncomingMessage, type Log, type Store } from './ports.js';
import { localTime } from './text/local-time.js';
import { askBack, HELP, NOTHING_TO_STOP, notBuiltYet, noWeather, somethingFailed } from './text/reply-text.js';

/** Names of crops for the language room: families first, so that a plain word means the family. */
export const CROP_WORDS: readonly CropWord[] = [
  ...cropFamilies.map(({ name }) => ({ id: name, names: [name] })),
  ...cropRows.filter(({ id }) => !id.startsWith('class_')).map((row) => ({ id: row.id, names: [row.commonName, ...row.aliases] })),
];

export interface ConversationPorts extends EveningPorts {
  readonly store: Store;
  readonly log: Log;
}

/** One message in, one answer out: decides which night is meant and routes the meaning to the feature that serves it. */
export async function answerMessage(message: IncomingMessage, subject: EveningSubject, ports: ConversationPorts): Promise<string> {
  const { grower } = subject.greenhouse;
  const intent = understand({ text: message.text, atS: message.receivedAtS, zone: subject.zone, units: grower.units, crops: CROP_WORDS });
  try {
    return await answerIntent(intent, message, subject, ports);
  } catch (error) {
    if (error instanceof NoWeatherError) return noWeather(error.message);
    ports.log.error('answer failed', { kind: intent.kind, error });
    return somethingFailed(error instanceof Error ? error.message : String(error));
  }
}

/** The week ahead on what the grower is known to have done. */
async function week(subject: EveningSubject, ports: ConversationPorts): Promise<Week> {
  const past = await pastControls(ports.store, subject.greenhouseId, { greenhouse: subject.greenhouse, nowS: Math.floor(ports.clock.nowS()) });
  return weekOf(subject, ports, past);
}

async function answerIntent(intent: Intent, message: IncomingMessage, subject: EveningSubject, ports: ConversationPorts): Promise<string> {
  const { units } = subject.greenhouse.grower;
  const time = localTime(subject.zone);
  const spoken = { greenhouseId: message.greenhouseId, receivedAtS: message.receivedAtS, text: message.text, units };
  const night = nightSpan(message.receivedAtS, subject.greenhouse.place);
  const tonight = time.date(night.sunsetS);
  switch (intent.kind) {
    case 'reading':
      return logReadings(intent, spoken, ports.store);
    case 'fix':
      return fixReading(intent, spoken, ports.store);
    case 'advice':
    case 'why':
      return (await issueAdvisory(subject, ports)).advisory.text;
    case 'outlook':
      if (intent.night === tonight && intent.span === undefined) return (await issueAdvisory(subject, ports)).advisory.text;
      return answerOutlook(await week(subject, ports), { ...(intent.night === undefined ? {} : { night: intent.night }), ...(intent.span ? { nights: intent.span.nights } : {}) }, units);
    case 'crop':
      if (intent.night !== tonight) return answerCropAhead(await week(subject, ports), { crops: 'crops' in intent ? intent.crops : [intent.crop], night: intent.night });
      return answerCrop('crops' in intent ? intent.crops : [intent.crop], (await issueAdvisory(subject, ports)).advisory, { units, cropName, dayName: time.day(night.sunsetS) });
    case 'did':
      return logDeeds(intent, { ...spoken, greenhouse: subject.greenhouse, night: tonight }, ports.store);
    case 'help':
    case 'start':
      return HELP;
    case 'stop':
      return NOTHING_TO_STOP;
    case 'unclear':
      return askBack(intent.asks, intent.word, intent.choices);
    default:
      return notBuiltYet(intent.kind);
  }
}
