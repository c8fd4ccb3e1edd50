package org.ouzelbook.ui.report;

/** What weak eyes see of a page. */
final class Weak {
    /**
     * Texts whose contrast with their ground is under 4.5 : 1, with that contrast; relative luminance and contrast by the Web Content
     * Accessibility Guidelines 2.1, 1.4.3, W3C 2018.
     */
    static final String EYES = """
            (() => {
              const parse = c => (c.match(/[\\d.]+/g) || []).map(Number);
              const light = c => { const [r, g, b] = parse(c).map(v => { v /= 255; return v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; });
                return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
              const ground = e => { for (; e; e = e.parentElement) { const c = parse(getComputedStyle(e).backgroundColor);
                if (c.length === 3 || c[3] > 0) return getComputedStyle(e).backgroundColor; } return 'rgb(255,255,255)'; };
              const faint = [];
              const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
              let seen = 0;
              while (walk.nextNode()) {
                const e = walk.currentNode.parentElement;
                if (!walk.currentNode.data.trim() || ['SCRIPT', 'STYLE', 'title', 'desc'].includes(e.tagName) || !e.getClientRects().length) continue;
                const style = getComputedStyle(e);
                const [a, b] = [light(e.ownerSVGElement ? style.fill : style.color), light(ground(e))].sort((x, y) => y - x);
                seen++;
                if ((a + 0.05) / (b + 0.05) < 4.5) faint.push(walk.currentNode.data.trim() + ' ' + ((a + 0.05) / (b + 0.05)).toFixed(2));
              }
              return {seen, faint};
            })()""";

    private Weak() {}
}
