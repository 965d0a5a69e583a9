import type { Kysely } from 'kysely';
import type { WithinMemory } from '../journal.js';
import { actions, addAction } from './actions.js';
import { addAdvisory, advisoriesAfter, advisoryBy, advisoryFor, lastAdvisory } from './advisories.js';
import { channelsInUse, chat, chatById, chatsAfter, chatsOf, openChat, updateChat } from './chats.js';
import { eraseChat, eraseGreenhouse, type PlaceKeyOf } from './erase.js';
import { greenhouse, saveGreenhouse } from './greenhouses.js';
import { failInbound, finishInbound, keepInbound, openInbound } from './inbox.js';
import { addInvite, takeInvite } from './invites.js';
import { addJob, cancelJobs, dueJobs, finishJob, moveJob, postponeJob } from './jobs.js';
import { learnedFrom, learning, saveLearning } from './learning.js';
import { moveChat } from './move-chat.js';
import { addOutbound, beginSend, dueOutbound, endSend, outboundSentAs, recoverSends } from './outbox.js';
import { purge } from './purge.js';
import { addReading, everyReading, replaceReading, standingReadings, withdrawReading } from './readings.js';
import type { StoreTables } from './schema.js';
import { addMark, addOutcome, marks, outcomes, toldIn, withdrawTold } from './told.js';
import { isUnsettled } from './unsettled.js';
import { lastWeather, saveWeather } from './weather-answers.js';

/** How a call is run: alone, or in its turn inside a transaction. */
export type RunCall = <T>(call: () => Promise<T>) => Promise<T>;

export interface OperationsOptions {
  readonly placeKeyOf: PlaceKeyOf;
  /** Called after words were removed that must not linger in the file. */
  readonly removed: () => void;
}

/** All that the store and the journal can do, on a database or on one transaction. */
export function operationsOn(db: Kysely<StoreTables>, run: RunCall, { placeKeyOf, removed }: OperationsOptions): WithinMemory {
  return {
    saveGreenhouse: (row) => run(() => saveGreenhouse(db, row)),
    greenhouse: (id) => run(() => greenhouse(db, id)),
    addReading: (row) => run(() => addReading(db, row)),
    replaceReading: (id, replacement) => run(() => replaceReading(db, id, replacement)),
    withdrawReading: (id, withdrawnAtS) => run(() => withdrawReading(db, id, withdrawnAtS)),
    readings: (greenhouseId, limit) => run(() => standingReadings(db, greenhouseId, limit)),
    everyReading: (greenhouseId, sinceS) => run(() => everyReading(db, greenhouseId, sinceS)),
    addAction: (row) => run(() => addAction(db, row)),
    actions: (greenhouseId, sinceS) => run(() => actions(db, greenhouseId, sinceS)),
    addOutcome: (row) => run(() => addOutcome(db, row)),
    outcomes: (greenhouseId, limit) => run(() => outcomes(db, greenhouseId, limit)),
    addMark: (row) => run(() => addMark(db, row)),
    marks: (greenhouseId, limit) => run(() => marks(db, greenhouseId, limit)),
    toldIn: (greenhouseId, message) => run(() => toldIn(db, greenhouseId, message)),
    withdrawTold: (told, withdrawnAtS) => run(() => withdrawTold(db, told, withdrawnAtS)),
    saveWeather: (row) => run(() => saveWeather(db, row)),
    lastWeather: (placeKey) => run(() => lastWeather(db, placeKey)),
    saveLearning: (row) => run(() => saveLearning(db, row)),
    learning: (greenhouseId) => run(() => learning(db, greenhouseId)),
    learnedFrom: (greenhouseId) => run(() => learnedFrom(db, greenhouseId)),
    addAdvisory: (row) => run(() => addAdvisory(db, row)),
    lastAdvisory: (greenhouseId) => run(() => lastAdvisory(db, greenhouseId)),
    advisoryFor: (greenhouseId, night) => run(() => advisoryFor(db, greenhouseId, night)),
    advisoryBy: (greenhouseId, night, atS) => run(() => advisoryBy(db, greenhouseId, night, atS)),
    advisoriesAfter: (greenhouseId, after, limit) => run(() => advisoriesAfter(db, greenhouseId, after, limit)),

    keepInbound: (inbound) => run(() => keepInbound(db, inbound)),
    openInbound: (limit) => run(() => openInbound(db, limit)),
    finishInbound: (id, outcome, atS) => run(() => finishInbound(db, id, outcome, atS)),
    failInbound: (id, cause) => run(() => failInbound(db, id, cause)),

    addOutbound: (row) => run(() => addOutbound(db, row)),
    dueOutbound: (nowS, limit, held) => run(() => dueOutbound(db, nowS, limit, held)),
    beginSend: (id, atS) => run(() => beginSend(db, id, atS)),
    endSend: (id, outcome, atS) => run(() => endSend(db, id, outcome, atS)),
    recoverSends: () => run(() => recoverSends(db)),
    outboundSentAs: (chatId, sentAs) => run(() => outboundSentAs(db, chatId, sentAs)),

    addJob: (row) => run(() => addJob(db, row)),
    dueJobs: (nowS, limit) => run(() => dueJobs(db, nowS, limit)),
    finishJob: (id, outcome, atS) => run(() => finishJob(db, id, outcome, atS)),
    postponeJob: (id, dueAtS) => run(() => postponeJob(db, id, dueAtS)),
    moveJob: (key, dueAtS, body) => run(() => moveJob(db, key, dueAtS, body)),
    cancelJobs: (greenhouseId, kind) => run(() => cancelJobs(db, greenhouseId, kind)),

    chat: (address) => run(() => chat(db, address)),
    chatById: (id) => run(() => chatById(db, id)),
    openChat: (address, more) => run(() => openChat(db, address, more)),
    updateChat: (id, change) => run(() => updateChat(db, id, change)),
    moveChat: (id, to) => run(() => moveChat(db, id, to)),
    chatsOf: (greenhouseId) => run(() => chatsOf(db, greenhouseId)),
    chatsAfter: (id, limit) => run(() => chatsAfter(db, id, limit)),
    channelsInUse: () => run(() => channelsInUse(db)),
    isUnsettled: (address, nowS) => run(() => isUnsettled(db, address, nowS)),

    addInvite: (row) => run(() => addInvite(db, row)),
    takeInvite: (code, nowS) => run(() => takeInvite(db, code, nowS)),

    eraseGreenhouse: (greenhouseId) => run(() => eraseGreenhouse(db, greenhouseId, placeKeyOf).then(removed)),
    eraseChat: (id) => run(() => eraseChat(db, id).then(removed)),
    purge: (olderThanS) => run(() => purge(db, olderThanS).then(removed)),
  };
}
