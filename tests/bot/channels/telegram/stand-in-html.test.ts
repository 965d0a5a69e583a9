import { describe, expect, it } from 'vitest';
import { readHtml } from '../../../fixtures/bot-api/telegram-html.js';

// From the server's own tests: tdlib/td, test/message_entities.cpp, TEST(MessageEntities, parse_html), of 2026.
const STADIUM = '\u{1F3DF} \u{1F3DF}';
const UNPAIRED = 'Text contains invalid Unicode characters after decoding HTML entities, check for unmatched surrogate code units';

describe('the stand-in refuses markup as the service does', () => {
  it.each([
    ['&#57311;', UNPAIRED],
    ['&#xDFDF;', UNPAIRED],
    ['&#xDFDF', UNPAIRED],
    [`${STADIUM}&lt;<abacaba`, 'Unclosed start tag at byte offset 13'],
    [`${STADIUM}&lt;<abac aba>`, 'Unsupported start tag "abac" at byte offset 13'],
    [`${STADIUM}&lt;<abac>`, 'Unsupported start tag "abac" at byte offset 13'],
    [`${STADIUM}&lt;<i   =aba>`, 'Empty attribute name in the tag "i" at byte offset 13'],
    [`${STADIUM}&lt;<i    aba>`, 'Can\'t find end tag corresponding to start tag "i"'],
    [`${STADIUM}&lt;<i    aba  =  `, 'Unclosed start tag "i" at byte offset 13'],
    [`${STADIUM}&lt;<i    aba  =  190azAz-.,`, 'Unexpected end of name token at byte offset 27'],
    [`${STADIUM}&lt;<i    aba  =  "&lt;&gt;&quot;>`, 'Unclosed start tag at byte offset 13'],
    [`${STADIUM}&lt;<i    aba  =  '&lt;&gt;&quot;>`, 'Unclosed start tag at byte offset 13'],
    [`${STADIUM}&lt;</`, 'Unexpected end tag at byte offset 13'],
    [`${STADIUM}&lt;<b></b></`, 'Unexpected end tag at byte offset 20'],
    [`${STADIUM}&lt;<i>a</i   `, 'Unclosed end tag at byte offset 17'],
    [`${STADIUM}&lt;<i>a</em   >`, 'Unmatched end tag at byte offset 17, expected "</i>", found "</em>"'],
  ])('%s', (html, message) => {
    expect(() => readHtml(html)).toThrow(expect.objectContaining({ message }));
  });
});

describe('the stand-in reads markup as the service does', () => {
  it.each([
    ['', ''],
    ['&ge;&lt;&gt;&amp;&quot;&laquo;&raquo;&#12345678;', '&ge;<>&"&laquo;&raquo;&#12345678;'],
    ['a<i>b</i>', 'ab'],
    ['a<blockquote>b</blockquote>', 'ab'],
    [`${STADIUM}<i>x &lt${STADIUM}</i>`, `${STADIUM}x <${STADIUM}`],
    [`a&gt;<b aba   =   caba>&lt</b>`, 'a><'],
    [`&lt;<i    aba  =  190azAz-.   >a</i>`, '<a'],
    [`&lt;<i    aba  =  "&lt;&gt;&quot;">a</i>`, '<a'],
    [`&lt;<i    aba  =  '&lt;&gt;&quot;'>a</>`, '<a'],
    ['&lt;<i>a</    >', '<a'],
    ['&lt;<b></b>', '<'],
    ['a<span class = "tg-spoiler">b</span><b>c</b>', 'abc'],
    ['<code><i><b> </b></i></code><i><b><code> </code></b></i>', '  '],
    ['<pre><code class="language-fift">x</></>', 'x'],
    ['<blockquote   expandable>a&lt;<pre  >b;</></>', 'a<b;'],
    ['<a   href=  \'telegram.org?&lt;\'   > </a>', ' '],
  ])('%s', (html, text) => {
    expect(readHtml(html)).toBe(text);
  });
});
