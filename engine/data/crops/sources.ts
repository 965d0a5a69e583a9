import type { CropNumber } from '../../crops/crop-row.js';

// Where each crop temperature was read. The key leads to the full citation in SOURCES.md. A source has one grade, so a number
// cannot be called better than the place it comes from.

/** Read in an extension, standards or peer-reviewed text (some only as an abstract or a reprint). */
const PUBLISHED = {
  AskExtension2024: 'Ask Extension / Michigan State Univ. answer 865469, 2024 (most brassicas take 28 F and a little lower briefly)',
  'Boyce-Strawberry': 'Boyce, J. Amer. Soc. Hort. Sci. (Catskill strawberry crown T50 about -12.5 C)',
  Cary1975: 'Cary 1975, Agronomy Journal 67:258-262 (sugar beet seedlings)',
  'Delaware-FallVegetables': 'Univ. of Delaware, G. Johnson, Frost, Freezes and Fall Vegetables',
  'Delaware-Strawberry': 'Univ. of Delaware, G. Johnson, Critical Temperatures for Strawberry Buds and Blossoms',
  Henriquez2018: 'Alberta field frost data, Henriquez et al. 2018 (as summarised by Canadian Agronomist)',
  JFoodQuality2018: 'J. Food Quality 2018, 8517018, Table 1 (critical chilling temperatures, harvested produce)',
  'KState-CoolSeason': 'Kansas State Univ. Extension, W. Upham, Hardiness of cool-season vegetables (read in a newspaper reprint)',
  'KState-FieldPeas': 'Kansas State Univ. Agronomy eUpdate, Effect of cold temperatures on field peas',
  KohnLevitt1965: 'Kohn & Levitt 1965, Plant Physiology 40:476-480',
  'LSU-Citrus': 'LSU AgCenter, Citrus and Freezing Temperatures',
  LangeCameron1997: 'Lange & Cameron 1997, HortScience 32:114-116',
  LoelHoffmann2014: 'Loel & Hoffmann 2014, Field Crops Research 162:70-76 (sugar beet)',
  'Maryland-Seedlings2023': 'Univ. of Maryland Extension, Hardening Vegetable Seedlings, 2023',
  'Mashhad-Dianthus': 'Dianthus barbatus freezing test, Ferdowsi Univ. Mashhad',
  'Mashhad-Viola': 'Viola gracilis freezing test, Ferdowsi Univ. Mashhad 2008-09',
  'NCState-Strawberry': 'NC State Extension, cold protection, strawberry',
  PMC10202904: 'PMC10202904 Table 2 "Relative frost resistance of temperate crop species" (peer-reviewed, 2023)',
  'Purdue-Chilling': 'Purdue Vegetable Crops Hotline, Chilling Injury on Young Warm-season Vegetable Plants',
  'Purdue-Grapes': 'Purdue Extension, Pruning to adjust for winter injury... grapes',
  'Rutgers-FS1198': 'Rutgers NJAES FS1198, Figs in the Home Garden, 2012',
  Snyder2005: 'FAO Env. & Nat. Res. Series 10, Snyder & de Melo-Abreu 2005, ch. 4 introduction',
  Tamura2002: 'Tamura 2002, J. Japan. Soc. Hort. Sci. 71:74-81 (unheated greenhouse)',
  'UtahState-Tomato': 'Utah State Univ. Extension, Abiotic Disorders of Tomatoes (cold injury 33-50 F)',
  'WSU-EB0913': 'WSU EB0913/EB0914/EB1128 as tabulated by MSU, Penn State and Utah State Extension',
} as const;

/** Grower record, seed trade, reprint of an answer, or a one-step derivation from a published value (then said so). */
const SECONDARY = {
  'BotanicalInterests-Frost': 'Botanical Interests frost list (seed vendor)',
  DawlingBezilla2016: 'Dawling & Bezilla grower winter-kill list 2012/2016 (outdoor lows, zone 7a)',
  'GardenBetty-Winter': 'GardenBetty winter notes (grower, Central Oregon)',
  GrowerForum: 'grower forum report',
  MeyerBadaruddin2001: 'derived: mirrored about LT50 -4.5 of vernalised field pea seedlings (Meyer & Badaruddin 2001, Crop Science 41:1838)',
  'OldTextbook-Cabbage': 'older textbook passage on hardened cabbage plants (12-15 F)',
  'PlantPhysiol2004-Canola': 'derived: mirrored about nonacclimated canola LT50 -3 (Plant Physiology 135:1642, 2004, Table I) with damage at -2.2',
  'TexasAM-ColdTolerance': 'Texas A&M cold-tolerance answer (read in reprints)',
  'USDA-HardinessZones': 'USDA hardiness-zone lower bound from nursery zone ratings',
  'ValdostaTimes-Citrus': 'Valdosta Daily Times column from the south Georgia citrus research plot',
} as const;

/** Recalled or a project estimate: a prior, to be corrected by what growers report. */
const FROM_MEMORY = {
  DawlingRecalled: 'colder part of the Dawling & Bezilla list 2016-2021, recalled',
  ProjectEstimate: 'recalled / project estimate',
} as const;

export type PublishedKey = keyof typeof PUBLISHED;
export type SecondaryKey = keyof typeof SECONDARY;
export type FromMemoryKey = keyof typeof FROM_MEMORY;
export type CropSourceKey = PublishedKey | SecondaryKey | FromMemoryKey;

/**
 * A number with its place.
 * Units: valueC in °C as printed.
 * Valid: published sources alone.
 * Outside: does not compile.
 * Source: the one named.
 */
export const published = (valueC: number, sourceKey: PublishedKey): CropNumber => ({ valueC, grade: 'published', sourceKey, source: PUBLISHED[sourceKey] });

/**
 * A number with its place.
 * Units: valueC in °C as printed.
 * Valid: secondary sources alone.
 * Outside: does not compile.
 * Source: the one named.
 */
export const secondary = (valueC: number, sourceKey: SecondaryKey): CropNumber => ({ valueC, grade: 'secondary', sourceKey, source: SECONDARY[sourceKey] });

/**
 * A number with its place.
 * Units: valueC in °C as printed.
 * Valid: from memory sources alone.
 * Outside: does not compile.
 * Source: the one named.
 */
export const fromMemory = (valueC: number, sourceKey: FromMemoryKey): CropNumber => ({ valueC, grade: 'from memory', sourceKey, source: FROM_MEMORY[sourceKey] });
