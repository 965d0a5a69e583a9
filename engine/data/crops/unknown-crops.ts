import type { CropRow } from '../../crops/crop-row.js';
import { fromMemory, published } from './sources.js';

/** What a crop that is not in the table is taken for, by hardiness class. Values in °C as printed. */
export const UNKNOWN_CROPS = [
  {
    id: 'class_tender', commonName: 'Unknown tender crop', botanicalName: '(fallback)',
    aliases: ['tender'],
    hardinessClass: 'tender', hardening: 'none', harvestEarly: true,
    hardened: null,
    soft: { damage: published(0.0, 'PMC10202904'), kill: published(-2.0, 'PMC10202904') },
    chill: published(12.8, 'Purdue-Chilling'), refersTo: 'air at plant level (under any cover)', durationMin: null,
    coverNote: 'Treat as killed by any frost.',
    note: null,
  },
  {
    id: 'class_half_hardy', commonName: 'Unknown half-hardy / semi-hardy crop', botanicalName: '(fallback)',
    aliases: ['half-hardy', 'semi-hardy', 'frost tolerant'],
    hardinessClass: 'half-hardy', hardening: 'fast', harvestEarly: false,
    hardened: { damage: published(-2.2, 'KState-CoolSeason'), kill: fromMemory(-5.6, 'ProjectEstimate') },
    soft: { damage: fromMemory(-1.0, 'ProjectEstimate'), kill: fromMemory(-3.3, 'ProjectEstimate') },
    chill: null, refersTo: 'air at plant level (under any cover)', durationMin: null,
    coverNote: 'Light frost only; cover below -2 C.',
    note: null,
  },
  {
    id: 'class_hardy', commonName: 'Unknown hardy crop', botanicalName: '(fallback)',
    aliases: ['hardy', 'brassica', 'brassicas', 'cole crops', 'cole crop'],
    hardinessClass: 'hardy', hardening: 'fast', harvestEarly: false,
    hardened: { damage: published(-5.0, 'KState-CoolSeason'), kill: fromMemory(-9.4, 'ProjectEstimate') },
    soft: { damage: published(-2.2, 'AskExtension2024'), kill: fromMemory(-5.0, 'ProjectEstimate') },
    chill: null, refersTo: 'air at plant level (under any cover)', durationMin: null,
    coverNote: 'Cover below -5 C.',
    note: null,
  },
  {
    id: 'class_very_hardy', commonName: 'Unknown very hardy crop', botanicalName: '(fallback)',
    aliases: ['very hardy', 'winter hardy'],
    hardinessClass: 'very hardy', hardening: 'fast', harvestEarly: false,
    hardened: { damage: published(-7.0, 'PMC10202904'), kill: fromMemory(-13.9, 'ProjectEstimate') },
    soft: { damage: fromMemory(-2.2, 'ProjectEstimate'), kill: fromMemory(-6.0, 'ProjectEstimate') },
    chill: null, refersTo: 'air at plant level (under any cover)', durationMin: null,
    coverNote: 'Cover below -7 C.',
    note: null,
  },
] as const satisfies readonly CropRow[];
