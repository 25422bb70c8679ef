/** Keeps an edition of the pages for when there is no network. What it holds is written before it: EDITION and FILES.
 *  A new edition waits until the reader takes it; sounds and pictures are kept once they were asked for. */

const worker = /** @type {any} */ (globalThis);
const ROOT = new URL("./", worker.location.href).href;
const NAME = `crystal-to-reaction ${ROOT} `;

worker.addEventListener("install", (/** @type {any} */ event) => {
  event.waitUntil(caches.open(NAME + EDITION).then((kept) => kept.addAll(FILES.map((file) => new Request(ROOT + file, { cache: "no-cache" })))));
});

worker.addEventListener("activate", (/** @type {any} */ event) => {
  const old = (/** @type {string} */ name) => name.startsWith(NAME) && name !== NAME + EDITION;
  event.waitUntil(caches.keys().then((names) => Promise.all(names.filter(old).map((name) => caches.delete(name)))).then(() => worker.clients.claim()));
});

worker.addEventListener("message", (/** @type {MessageEvent} */ event) => {
  if (event.data === "take the new edition") worker.skipWaiting();
});

worker.addEventListener("fetch", (/** @type {any} */ event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(ROOT)) event.respondWith(answer(event.request));
});

/** @param {Request} request */
async function answer(request) {
  const kept = await caches.open(NAME + EDITION);
  const address = request.url.replace(/[?#].*/, "").replace(/\/$/, "/index.html");
  const range = request.headers.get("range");
  let found = await kept.match(address);
  if (!found) {
    try {
      found = await fetch(address);
    } catch {
      return request.mode === "navigate" ? ((await kept.match(`${ROOT}404.html`)) ?? Response.error()) : Response.error();
    }
    if (found.status === 200) await kept.put(address, found.clone());
  }
  return range && found.status === 200 ? partOf(found, range) : found;
}

/** What a player asks for: some bytes of a file. @param {Response} whole @param {string} range */
async function partOf(whole, range) {
  const bytes = await whole.arrayBuffer();
  const [, from = "0", to = ""] = /^bytes=(\d+)-(\d*)$/.exec(range) ?? [];
  const first = Number(from);
  const last = to ? Math.min(Number(to), bytes.byteLength - 1) : bytes.byteLength - 1;
  const headers = { "Content-Type": whole.headers.get("Content-Type") ?? "", "Content-Range": `bytes ${first}-${last}/${bytes.byteLength}` };
  return new Response(bytes.slice(first, last + 1), { status: 206, headers });
}
