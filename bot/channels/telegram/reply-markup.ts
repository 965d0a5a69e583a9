import type { InlineKeyboardMarkup, ReplyKeyboardMarkup, ReplyKeyboardRemove } from 'grammy/types';
import type { Button } from '../../chat.js';

export type ReplyMarkup = InlineKeyboardMarkup | ReplyKeyboardMarkup | ReplyKeyboardRemove;

/** Buttons under a message. */
export const buttonsUnder = (rows: readonly (readonly Button[])[]): ReplyMarkup => ({ inline_keyboard: rows.map((row) => row.map(({ id, label }) => ({ text: label, callback_data: id }))) });

/** One button in place of the keyboard, which sends the place; it goes away once used. */
export const askForPlace = (label: string): ReplyMarkup => ({ keyboard: [[{ text: label, request_location: true }]], resize_keyboard: true, one_time_keyboard: true });

/** For growers who typed their place instead. */
export const ASK_NO_MORE: ReplyMarkup = { remove_keyboard: true };
