import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { escapeText, svgElement } from '../../../bot/chart/svg-element.js';

const HOSTILE = ['</text><script>alert(1)</script>', '"><image href="file:///etc/passwd"/>', "O'Hara & <b>sons</b>", '&amp;lt;', ']]>', '<!-- --><![CDATA[x', '\u0000\u0008\u001f\uffff', '\ud800 lone', '&#x0;'];

describe('elements', () => {
  it.each(HOSTILE)('keep %j a text and stay a document that is read', (text) => {
    const { markup } = svgElement('svg', { xmlns: 'http://www.w3.org/2000/svg', width: 10, height: 10, 'data-name': text }, svgElement('text', {}, `a${text}`));
    expect(() => new Resvg(markup)).not.toThrow();
    expect(markup.match(/</gu)).toHaveLength(4);
    expect(markup).not.toMatch(/<(?:script|image|b|!)/u);
  });

  it('escape what they are given, once', () => {
    expect(escapeText('a & b < c > "d" \'e\'')).toBe('a &amp; b &lt; c &gt; &quot;d&quot; &apos;e&apos;');
    expect(escapeText('&amp;')).toBe('&amp;amp;');
  });

  it('round numbers, and refuse one that cannot be drawn', () => {
    expect(svgElement('a', { x: 1 / 3, y: -0.0001, z: 2 }).markup).toBe('<a x="0.33" y="0" z="2"/>');
    for (const wrong of [NaN, Infinity]) expect(() => svgElement('a', { x: wrong })).toThrow(RangeError);
  });
});
