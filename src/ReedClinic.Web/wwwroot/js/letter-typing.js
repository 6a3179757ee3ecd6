// Keeps what is being typed in a letter in this tab until the studio has it: going elsewhere, reloading, or a lost session loses nothing.
// Only the parts that were changed, each with the mark of the text it began from, so that it is never put over another teacher's words.
const form = document.querySelector('[data-keeps-typing]');
if (form) {
  const name = form.dataset.keepsTyping;
  const areas = [...form.querySelectorAll('textarea[name^="Block."]')];
  // What the studio sent: a browser may have put back by itself what was typed before a reload.
  const before = new Map(areas.map(area => [area.name, area.defaultValue]));
  const shown = area => form.elements['Shown.' + area.name.slice('Block.'.length)]?.value ?? '';
  const note = document.getElementById('letter-typed');
  const read = () => { try { return JSON.parse(sessionStorage.getItem(name)) ?? {}; } catch { return {}; } };
  const write = typed => {
    try {
      if (Object.keys(typed).length) sessionStorage.setItem(name, JSON.stringify(typed)); else sessionStorage.removeItem(name);
    } catch { /* A browser that keeps nothing: then only the button keeps it. */ }
  };
  const clear = () => { write({}); note.hidden = true; };

  // Kept now, and not on an earlier showing of the same address.
  const sent = name + '-sent';
  if (form.dataset.kept === 'yes' && sessionStorage.getItem(sent)) clear();
  sessionStorage.removeItem(sent);
  form.addEventListener('submit', () => sessionStorage.setItem(sent, 'yes'));
  const typed = read();
  let back = 0;
  for (const area of areas) {
    const was = typed[area.name];
    if (was && was.text !== area.defaultValue && was.from === shown(area)) {
      area.value = was.text;
      area.closest('details')?.setAttribute('open', '');
      area.classList.add('typed-before');
      back++;
    }
  }

  note.hidden = back === 0;
  form.addEventListener('input', event => {
    const area = event.target;
    if (!before.has(area.name)) return;
    const now = read();
    if (area.value === before.get(area.name)) delete now[area.name]; else now[area.name] = { text: area.value, from: shown(area) };
    write(now);
  });
  document.getElementById('letter-typed-drop').addEventListener('click', () => {
    for (const area of areas) { area.value = before.get(area.name); area.classList.remove('typed-before'); }
    clear();
  });
  form.dataset.typingReady = 'yes';
}
