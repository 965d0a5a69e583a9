import { readdirSync } from 'node:fs';
import { isPublishedTable, type PublishedTable } from './published-table.js';

const HERE = new URL('./', import.meta.url);
const TABLE_FILE = /^(?:[a-z0-9-]+-)?cases\.ts$/u;

/** Folders in the order of the story; one that is not named here follows by name, whole houses last. */
const STORY: readonly string[] = [
  // Moist air
  'ASHRAE-F17', 'WMO-No8', 'psychrolib', 'Stull2011',
  // Sun
  'Reda2004', 'pvlib', 'suncalc', 'Spencer1971', 'Haurwitz1945', 'Erbs1982', 'Liu1963',
  // Sky
  'Prata1996', 'Brunt1932', 'Swinbank1963', 'IdsoJackson1969', 'Brutsaert1975', 'ClarkAllen1978', 'BerdahlMartin1984', 'Unsworth1975', 'FAO-56',
  'SURFRAD-Bondville', 'SURFRAD-SanLuisValley', 'ARM-SGP', 'Morin2012',
  // Cover and convection
  'NRAES-33', 'Siegel2002', 'eXtension-Glazing', 'Bartok-GreenhouseManagement', 'ASHRAE-HVACApps', 'Roberts1985', 'Mihara1979', 'Rasheed2017', 'Geoola2011', 'Wisconsin-GreenhouseEnergy', 'Moene2014',
  'Watmuff1977', 'Walton1983', 'Yazdanian1994', 'Churchill1975',
  // Air exchange, ground, stores, heat
  'EnergyPlusEngRef', 'ASHRAE-F09', 'Carslaw1959', 'Kusuda1965', 'ASHRAE-90-1', 'Gnielinski1976', 'Wakao1982', 'Verlodt1990', 'Bleier1998', 'Smith2017', 'UMass-UnventedHeaters',
  // Networks
  'Incropera2007', 'ISO13790', 'VDI6007', 'odex',
  // Night and plants
  'Snyder2005', 'Campbell1998', 'WSU-EB0913', 'Bergjord2008', 'SpinachAcclimation-JASHS', 'NDSU-10365-33445', 'RifeZeinali2003', 'LoliumDehardening',
  // Decisions, scores, learning
  'Thompson1952', 'Katz1982', 'Finley1884', 'Gneiting2005', 'Jordan2019', 'Ferro2008', 'Murphy1973', 'Wilson1927', 'Kalman1960',
];
const LAST: readonly string[] = ['ASHRAE140', 'box', 'effects'];

const placeOf = (folder: string): number => {
  if (LAST.includes(folder)) return STORY.length + 1 + LAST.indexOf(folder);
  return STORY.includes(folder) ? STORY.indexOf(folder) : STORY.length;
};

/** Every table of the record: whatever array of tables a `cases.ts` or `*-cases.ts` of a source's folder exports. */
export async function allTables(): Promise<readonly PublishedTable[]> {
  const folders = readdirSync(HERE, { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => name).sort();
  const files = folders
    .sort((a, b) => placeOf(a) - placeOf(b))
    .flatMap((folder) => readdirSync(new URL(`${folder}/`, HERE)).filter((file) => TABLE_FILE.test(file)).sort().map((file) => `${folder}/${file}`));
  const modules = await Promise.all(files.map(async (file) => (await import(new URL(file, HERE).href)) as Readonly<Record<string, unknown>>));
  return modules.flatMap((module) => Object.values(module).flatMap((exported) => (Array.isArray(exported) && exported.every(isPublishedTable) ? exported : [])));
}
