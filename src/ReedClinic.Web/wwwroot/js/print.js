// A button that prints the page it stands on; without scripts the browser's own menu does the same.
for (const button of document.querySelectorAll('[data-print]')) {
  button.addEventListener('click', () => window.print());
}

// What a letter folds where the window is narrow stands open on paper and where there is room. A browser whose style sheets can’t open it
// is helped here: for a print, and in a wide window from the beginning.
const folds = () => document.querySelectorAll('.letter-fold');
const opened = new Set();
const open = () => {
  for (const fold of folds()) {
    if (!fold.open) opened.add(fold);
    fold.open = true;
  }
};
const close = () => {
  for (const fold of opened) fold.open = false;
  opened.clear();
};
const isWide = matchMedia('(min-width: 40.01rem)');
window.addEventListener('beforeprint', open);
window.addEventListener('afterprint', () => {
  if (!isWide.matches || CSS.supports('selector(::details-content)')) close();
});
if (!CSS.supports('selector(::details-content)')) {
  if (isWide.matches) open();
  isWide.addEventListener('change', () => (isWide.matches ? open() : close()));
}

// A part of the letter stands on this very page, whichever of its addresses this is: no need to fetch the page once more. It is
// gone to by the page's own fragment, so that Back returns to where the reader was.
document.querySelector('article.letter')?.addEventListener('click', event => {
  const id = event.target.closest('[data-part]')?.hash.slice(1);
  const part = id && document.getElementById(id);
  if (!part || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  part.setAttribute('tabindex', '-1');
  location.hash = id;
  part.focus({ preventScroll: true });
});
