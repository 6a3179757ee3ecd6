// What this tab keeps of the bench belongs to whoever said it: on somebody else’s page it is neither shown nor sent, and waits for its own.
export const boxOf = (reed) => `reedclinic-bench-${document.querySelector(".bench[data-me]")?.dataset.me}-${reed}`;
