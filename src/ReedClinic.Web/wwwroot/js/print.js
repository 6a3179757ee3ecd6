// A button that prints the page it stands on; without scripts the browser's own menu does the same.
for (const button of document.querySelectorAll('[data-print]')) {
  button.addEventListener('click', () => window.print());
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
