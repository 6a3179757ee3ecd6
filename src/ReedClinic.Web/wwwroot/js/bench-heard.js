// What a line comes to is read by the studio and comes a moment after the letters: until then it says something of other words.
export function followHeard(typedIn) {
  const heard = document.getElementById("line-heard");
  const mark = () => heard.toggleAttribute("data-behind", Boolean(typedIn.value) && heard.dataset.heard !== typedIn.value);
  const come = new MutationObserver(mark);
  come.observe(heard, { attributes: true, attributeFilter: ["data-heard"] });
  typedIn.addEventListener("input", mark);
  mark();
  return () => {
    come.disconnect();
    typedIn.removeEventListener("input", mark);
  };
}
