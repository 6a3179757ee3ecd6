// A button that prints the page it stands on; without scripts the browser's own menu does the same.
for (const button of document.querySelectorAll('[data-print]')) {
  button.addEventListener('click', () => window.print());
}

// A part of the letter stands on this very page, whichever of its addresses this is: no need to fetch the page once more.
document.querySelector('.letter-parts')?.addEventListener('click', event => {
  const id = event.target.closest('[data-part]')?.hash.slice(1);
  const part = id && document.getElementById(id);
  if (!part || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  history.replaceState(history.state, '', location.pathname + location.search + '#' + id);
  part.setAttribute('tabindex', '-1');
  part.focus({ preventScroll: true });
  part.scrollIntoView();
});
