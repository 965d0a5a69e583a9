import { InputFile, type Api } from 'grammy';
import type { ChatAddress, Outgoing, OutgoingDocument, SendResult } from '../../chat.js';
import type { Log } from '../../ports.js';
import { callFailure, type CallFailure } from './call-failure.js';
import { partsOf, type Part } from './message-parts.js';
import { Pace } from './pace.js';
import type { RealTime } from './real-time.js';
import { ASK_NO_MORE, askForPlace, buttonsUnder, type ReplyMarkup } from './reply-markup.js';
import { failedSend } from './send-result.js';
import { SentParts } from './sent-parts.js';

/** The service's limit for the words under a picture. */
const LONGEST_CAPTION = 1024;
/** Stands among the ids for a part that was not taken. */
const LEFT_OUT = '';
const CHAT_ID = /^-?\d{1,16}$/u;
/** The service says no to the form of the words, in its own wording: they may pass without markup. */
const MARKUP_REFUSED = /can't parse entities|message is too long|caption is too long/iu;

/** The topic was deleted or closed meanwhile, in the words of the server's source and of the service. */
const TOPIC_REFUSED = /message thread not found|TOPIC_(?:CLOSED|DELETED)/u;

/** One call of the service: words, a picture with words or without, or a document. */
interface Step {
  readonly words: Part | null;
  readonly picturePng: string | null;
  readonly document: OutgoingDocument | null;
  readonly markup: ReplyMarkup | null;
  /** Of a forum; null for the chat as a whole. */
  readonly topic: string | null;
}

/** `id` is null for a document that the service does not take. */
type StepResult = { readonly kind: 'sent'; readonly id: string | null } | { readonly kind: 'failed'; readonly failure: CallFailure };

export interface SenderPorts {
  readonly calls: Api;
  readonly log: Log;
  readonly time: RealTime;
  /** Words on the button that sends the place. */
  readonly placeLabel: string;
}

/** Sends messages, each in as many parts as it takes, in order. */
export class Sender {
  private readonly pace: Pace;
  private readonly sentParts = new SentParts();
  /** Chats whose keyboard is replaced by the button for the place. */
  private readonly asked = new Set<string>();

  constructor(private readonly ports: SenderPorts) {
    this.pace = new Pace(ports.time);
  }

  async send(to: ChatAddress, message: Outgoing): Promise<SendResult> {
    if (to.channel !== 'telegram' || !CHAT_ID.test(to.chat)) return { kind: 'refused', cause: `expected the id of a Telegram chat, got ${to.channel} ${JSON.stringify(to.chat)}` };
    const ids = [...this.sentParts.ids(to, message)];
    for (const step of this.stepsOf(to, message).slice(ids.length)) {
      const notNow = await this.pace.turn(to.chat, isGroup(to));
      if (notNow) return this.unfinished(to, message, ids, { kind: 'later', ...notNow, cause: 'keeping to the pace of the service' });
      const result = await this.sendStep(to.chat, step);
      if (result.kind === 'failed') return this.unfinished(to, message, ids, failedSend(result.failure, (retryAfterS) => this.pace.tooMuch(to.chat, retryAfterS)));
      ids.push(result.id ?? LEFT_OUT);
      this.noteKeyboard(to.chat, step);
    }
    this.sentParts.forget(to.chat, message);
    return { kind: 'sent', message: ids.at(-1)! };
  }

  private unfinished(to: ChatAddress, message: Outgoing, ids: readonly string[], result: SendResult): SendResult {
    this.sentParts.forget(to.chat, message);
    if (result.kind !== 'refused' && result.kind !== 'gone') this.sentParts.keep(result.kind === 'moved' ? result.to : to.chat, message, ids);
    if (result.kind === 'refused') this.ports.log.warn('telegram refuses a message', { cause: result.cause, partsOut: ids.length });
    return result;
  }

  private stepsOf(to: ChatAddress, message: Outgoing): readonly Step[] {
    const picturePng = message.picturePng ?? null;
    const markup = this.markupFor(to, message);
    const topic = message.topic ?? null;
    const plain: Step = { words: null, picturePng: null, document: null, markup: null, topic };
    // Before the words, under which the buttons stand.
    const documents = (message.documents ?? []).map((document): Step => ({ ...plain, document }));
    const parts: readonly (Part | null)[] = message.text === '' && picturePng !== null ? [null] : partsOf(message);
    if (picturePng !== null && message.text.length <= LONGEST_CAPTION) return [...documents, { ...plain, words: parts[0] ?? null, picturePng, markup }];
    const words = parts.map((part, i): Step => ({ ...plain, words: part, markup: i === parts.length - 1 ? markup : null }));
    return [...documents, ...(picturePng === null ? [] : [{ ...plain, picturePng }]), ...words];
  }

  /** A message carries one of them: buttons go before the button for the place. */
  private markupFor(to: ChatAddress, { buttons = [], asksForLocation = false }: Outgoing): ReplyMarkup | null {
    if (buttons.length > 0) return buttonsUnder(buttons);
    if (isGroup(to)) return null;
    if (asksForLocation) return askForPlace(this.ports.placeLabel);
    return this.asked.has(to.chat) ? ASK_NO_MORE : null;
  }

  private noteKeyboard(chat: string, { markup }: Step): void {
    if (markup && 'keyboard' in markup) this.asked.add(chat);
    if (markup && 'remove_keyboard' in markup) this.asked.delete(chat);
  }

  /** As it is; then outside its topic, or without markup, when that was refused; then the words without the picture, when that was refused. */
  private async sendStep(chat: string, step: Step): Promise<StepResult> {
    const first = await this.call(chat, step);
    if (first.kind === 'sent' || !isRefusal(first.failure)) return first;
    const { cause } = first.failure;
    if (step.topic !== null && TOPIC_REFUSED.test(cause)) return this.sendStep(chat, { ...step, topic: null });
    if (step.words !== null && step.words.html !== null && MARKUP_REFUSED.test(cause)) {
      this.ports.log.warn('telegram refuses the markup of a message: sent plain', { cause });
      return this.sendStep(chat, { ...step, words: { text: step.words.text, html: null } });
    }
    if (step.document !== null) {
      this.ports.log.warn('telegram refuses a document: the rest is sent without it', { cause });
      return { kind: 'sent', id: null };
    }
    if (step.picturePng === null || step.words === null) return first;
    this.ports.log.warn('telegram refuses a picture: its words are sent alone', { cause });
    return this.sendStep(chat, { ...step, picturePng: null });
  }

  private async call(chat: string, { words, picturePng, document, markup, topic }: Step): Promise<StepResult> {
    const { calls } = this.ports;
    const to = Number(chat);
    const form = words?.html === null || words === null ? {} : ({ parse_mode: 'HTML' } as const);
    const under = { ...(markup === null ? {} : { reply_markup: markup }), ...(topic === null ? {} : { message_thread_id: Number(topic) }) };
    const said = words?.html ?? words?.text ?? '';
    try {
      const { message_id: id } = await (document !== null
        ? calls.sendDocument(to, new InputFile(Buffer.from(document.text), document.name), under)
        : picturePng === null
          ? calls.sendMessage(to, said, { ...form, ...under, link_preview_options: { is_disabled: true } })
          : calls.sendPhoto(to, new InputFile(Buffer.from(picturePng, 'base64'), 'night.png'), { ...(words === null ? {} : { caption: said, ...form }), ...under }));
      return { kind: 'sent', id: String(id) };
    } catch (error) {
      return { kind: 'failed', failure: callFailure(error) };
    }
  }
}

/** Private chats have the id of the person, groups a negative one. */
const isGroup = ({ chat }: ChatAddress): boolean => chat.startsWith('-');

/** The service does not like this message; the chat is there and the service works. */
const isRefusal = (failure: CallFailure): boolean => failedSend(failure, () => ({ afterS: 0, scope: 'chat' })).kind === 'refused';
