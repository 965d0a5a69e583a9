import { drawNight } from './draw-night.js';
import { nightLayout } from './night-layout.js';
import type { NightPicture } from './night-picture.js';
import type { RenderPng } from './png-renderer.js';

/** The picture of a night as a PNG, 1080 pixels wide. */
export const nightPng = (picture: NightPicture, renderPng: RenderPng): Promise<Buffer> => renderPng(drawNight(nightLayout(picture)));
