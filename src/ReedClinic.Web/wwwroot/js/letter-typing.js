// Keeps what is being typed in a letter in this tab until the studio has it: going elsewhere, reloading, or a lost session loses nothing.
// Each part is kept with the mark of the text it began from. It is let go of when the studio shows the same words, and never put over
// words that somebody else wrote meanwhile: those are shown beside it.
const form = document.querySelector('[data-keeps-typing]');
if (form) {
  const name = form.dataset.keepsTyping;
  const fields = [...form.querySelectorAll('textarea, input[type="text"]')].filter(field => /^(Block|Answer|Reason)\./.test(field.name));
  const plain = text => text.replace(/\s+/g, ' ').trim();
  const shown = field => form.elements['Shown.' + field.name.slice('Block.'.length)]?.value ?? '';
  const note = document.getElementById('letter-typed');
  const others = document.getElementById('letter-typed-others');
  const read = () => { try { return JSON.parse(sessionStorage.getItem(name)) ?? {}; } catch { return {}; } };
  const write = typed => {
    try {
      if (Object.keys(typed).length) sessionStorage.setItem(name, JSON.stringify(typed)); else sessionStorage.removeItem(name);
    } catch { /* A browser that keeps nothing: then only the button keeps it. */ }
  };

  const typed = read();
  const left = {};
  for (const field of fields) {
    const was = typed[field.name];
    // What the studio sent is the default: a browser may have put back by itself what was typed before a reload.
    if (!was || plain(was.text) === plain(field.defaultValue)) continue;
    // What was typed before its part was written anew was kept first, as a version.
    if (field.name === `Block.${form.dataset.rewritten}` && was.from !== shown(field)) continue;
    left[field.name] = was;
    if (was.from === shown(field)) {
      field.value = was.text;
      field.closest('details')?.setAttribute('open', '');
      field.classList.add('typed-before');
      document.getElementById('letter-typed-back').hidden = note.hidden = false;
    } else {
      others.append(Object.assign(document.createElement('p'), { className: 'letter-fresh-text', textContent: was.text }));
      others.hidden = note.hidden = false;
    }
  }

  write(left);
  form.addEventListener('input', event => {
    const field = event.target;
    if (!fields.includes(field)) return;
    const now = read();
    if (plain(field.value) === plain(field.defaultValue)) delete now[field.name]; else now[field.name] = { text: field.value, from: shown(field) };
    write(now);
  });
  document.getElementById('letter-typed-drop').addEventListener('click', () => {
    for (const field of fields) {
      if (field.classList.contains('typed-before')) field.value = field.defaultValue;
      field.classList.remove('typed-before');
    }

    write({});
    note.hidden = true;
  });
  form.dataset.typingReady = 'yes';
}
