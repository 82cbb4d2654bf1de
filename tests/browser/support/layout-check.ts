/** What the eye would catch on any screen, measured: clipped text, things that lie over each other, raw keys, small targets. */
import type { Page } from 'playwright-core';

/** Runs in the page. Each finding is a sentence; an empty list is a clean screen. */
function findings(): string[] {
  const found: string[] = [];
  const name = (element: Element) =>
    `<${element.tagName.toLowerCase()} class="${element.getAttribute('class') ?? ''}"> "${(element.textContent ?? '').trim().slice(0, 60)}"`;
  const shown = (element: Element) => {
    const box = element.getBoundingClientRect();
    const seen = element.checkVisibility({
      visibilityProperty: true,
      opacityProperty: true,
      contentVisibilityAuto: true,
    });
    return seen && box.width > 1 && box.height > 1 && !element.closest('.away, .hidden');
  };

  /** A word that lies on two lines although no hyphen or space lets it. */
  const brokenWord = (element: Element) => {
    for (const node of element.childNodes) {
      if (node.nodeType !== 3) continue;
      for (const match of (node.textContent ?? '').matchAll(/[\p{L}\p{N}]{2,}/gu)) {
        const range = document.createRange();
        range.setStart(node, match.index);
        range.setEnd(node, match.index + match[0].length);
        const tops = new Set(
          [...range.getClientRects()].filter(({ width }) => width > 0).map(({ top }) => Math.round(top)),
        );
        if (tops.size > 1) return true;
      }
    }
    return false;
  };

  if (document.documentElement.scrollWidth > innerWidth + 1)
    found.push(`the page is ${document.documentElement.scrollWidth} px wide in a window of ${innerWidth}`);

  for (const element of document.querySelectorAll<HTMLElement>('body *')) {
    if (!shown(element) || element.closest('svg, canvas')) continue;
    const style = getComputedStyle(element);
    const ownText = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
    const scrolls = /auto|scroll/.test(style.overflowX) || element.closest('.scroll-x') !== null;
    // An inline box has no inner width of its own.
    if (
      ownText &&
      !scrolls &&
      style.display !== 'inline' &&
      element.scrollWidth > element.clientWidth + 1 &&
      element.clientWidth > 0
    ) {
      found.push(`text wider than its box: ${name(element)}`);
    }
    if (ownText && style.textOverflow === 'ellipsis' && element.scrollWidth > element.clientWidth)
      found.push(`text cut off: ${name(element)}`);
    const frame = element.closest('.sheet-body, .place-sheet, .guide, .callout-title, .tray, .sheets, .dialog-body');
    if (ownText && frame && !scrolls) {
      const outer = frame.getBoundingClientRect();
      const box = element.getBoundingClientRect();
      if (box.right > outer.right + 1 || box.left < outer.left - 1)
        found.push(`reaches out of its frame: ${name(element)}`);
    }
    if (ownText && style.display !== 'inline' && brokenWord(element))
      found.push(`a word is broken in two: ${name(element)}`);
    const key = (element.textContent ?? '').match(
      /\b(app|panels|names|bench|finish|debrief|guide|examiner|practice)\.[a-z][\w-]*/,
    );
    if (ownText && key) found.push(`a key instead of a text: ${key[0]}`);
  }

  const targets = [
    ...document.querySelectorAll<HTMLElement>(
      'button, a.button, select, input:not([type=radio]):not([type=checkbox]):not([type=range]):not([type=file]), summary',
    ),
  ].filter((element) => shown(element) && !element.closest('.bench-places'));
  for (const target of targets) {
    const box = target.getBoundingClientRect();
    if (box.height < 43.5 || (box.width < 43.5 && target.tagName !== 'SUMMARY'))
      found.push(`target of ${Math.round(box.width)} × ${Math.round(box.height)} px: ${name(target)}`);
  }

  // Inside one region nothing may lie over anything else that can be tapped.
  const region = (element: Element) =>
    element.closest(
      '.place-sheet, .command, dialog, .sheet-body, .sheets, .callout-title, .tray, .stage-over, .home, .debrief, .practice',
    );
  const visible = targets.filter((element) => {
    const scroller = element.closest('.sheet-body, .dialog');
    if (!scroller) return true;
    const outer = scroller.getBoundingClientRect();
    const box = element.getBoundingClientRect();
    return box.top >= outer.top && box.bottom <= outer.bottom;
  });
  visible.forEach((a, i) => {
    const first = a.getBoundingClientRect();
    for (const b of visible.slice(i + 1)) {
      if (a.contains(b) || b.contains(a) || region(a) !== region(b)) continue;
      const second = b.getBoundingClientRect();
      const wide = Math.min(first.right, second.right) - Math.max(first.left, second.left);
      const high = Math.min(first.bottom, second.bottom) - Math.max(first.top, second.top);
      if (wide > 1 && high > 1) found.push(`${name(a)} lies over ${name(b)}`);
    }
  });

  // A reading that hangs on the machine is covered by nothing that lies on it.
  const hung = [
    ...document.querySelectorAll<HTMLElement>('li:not(.away) .bench-tag:not([hidden]), .bench-views:not([hidden])'),
  ];
  hung.forEach((a, i) => {
    const first = a.getBoundingClientRect();
    for (const b of hung.slice(i + 1)) {
      const second = b.getBoundingClientRect();
      const wide = Math.min(first.right, second.right) - Math.max(first.left, second.left);
      const high = Math.min(first.bottom, second.bottom) - Math.max(first.top, second.top);
      if (wide > 1 && high > 1) found.push(`${name(a)} lies over ${name(b)}`);
    }
  });

  // The fixed regions of the callout share the window without covering each other.
  const regions = [
    '.callout-title',
    '.stage',
    '.sheet:not(.notebook-beside)',
    '.notebook-beside',
    '.tray',
    '.sheets',
  ].flatMap((selector) => {
    const element = document.querySelector(selector);
    return element && shown(element) ? [{ selector, box: element.getBoundingClientRect() }] : [];
  });
  for (const { selector, box } of regions) {
    if (box.bottom > innerHeight + 1 || box.right > innerWidth + 1) found.push(`${selector} reaches out of the window`);
  }
  regions.forEach((a, i) => {
    for (const b of regions.slice(i + 1)) {
      const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
      const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
      if (wide > 1 && high > 1) found.push(`${a.selector} lies over ${b.selector}`);
    }
  });
  return [...new Set(found)];
}

export function layoutFindings(page: Page): Promise<string[]> {
  return page.evaluate(findings);
}
