import { inventedTowns as townsFound } from '../../bot/play/invented-towns.js';
import { PlaceSearchError, type PlaceFinder } from '../../bot/ports.js';

/** The invented towns; `fails`: no search at all. */
export const inventedTowns = (fails: boolean): PlaceFinder =>
  fails ? { placesCalled: () => Promise.reject(new PlaceSearchError('network', 'no connection')) } : townsFound;
