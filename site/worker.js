/* Keeps the gallery readable without a network: what every page needs, and the recipes that were visited last.

   The build puts VERSION, a digest of what every page needs, SHELL, the list of it, and HOMES, the folder of each
   language, before this.
   The network always comes first, and whatever it brings takes the place of what was kept, even if it comes too late to
   be shown; what is not there any more is kept no longer. So nothing is shown that is older than the last time that there
   was a network. Caches of other versions are deleted. */
"use strict";

const PATIENCE = 4000;  // ms to wait for the network where there is something kept
const MOST_RECIPES = 12;
const MOST_FILES = 300;
const HOME = self.registration.scope;
const PREFIX = `spreadwright ${new URL(HOME).pathname} `;  // several galleries may lie at one address
const SHELL_CACHE = `${PREFIX}shell ${VERSION}`;
const RECIPE = `${PREFIX}recipe `;

const isOurs = (url) => url.startsWith(HOME);
const fresh = async (url) => sound(url, await fetch(url, { cache: "no-cache" }));
const pause = (time) => new Promise((_, reject) => { setTimeout(() => reject(new Error("slow")), time); });

self.addEventListener("install", (event) => {
  event.waitUntil((async () => {
    const cache = await caches.open(SHELL_CACHE);
    await Promise.all(SHELL.map((path) => new URL(path, HOME).href).map(async (url) => cache.put(url, await fresh(url))));
    await self.skipWaiting();
  })());
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    const names = await caches.keys();
    const isOld = (name) => name.startsWith(PREFIX) && !name.startsWith(RECIPE) && name !== SHELL_CACHE;
    await Promise.all(names.filter(isOld).map((name) => caches.delete(name)));
    await self.clients.claim();
  })());
});

/* Addresses of folders mean their index; fragments and parameters are the page's own business. */
function plain(url) {
  const found = new URL(url);
  found.hash = "";
  found.search = "";
  if (found.pathname.endsWith("/")) found.pathname += "index.html";
  return found.href;
}

/* The answer as it can be kept. Many hosts send on from an index to its folder: that is the page itself, made anew since a
   browser takes no page that was sent on from a worker. Whatever else is sent on may be a page to sign in. */
function sound(url, response) {
  if (!response.ok) return undefined;
  if (!response.redirected) return response;
  return plain(response.url) === url ? new Response(response.body, { headers: response.headers }) : undefined;
}

const keptCopy = (url) => caches.match(url, { ignoreVary: true });

async function renew(url, response) {
  const isGone = [404, 410].includes(response.status);
  const found = sound(url, response);
  if (!isGone && !found) return;
  for (const name of await caches.keys()) {
    const isThere = name.startsWith(PREFIX) && await caches.match(url, { cacheName: name, ignoreVary: true });
    if (!isThere) continue;
    const cache = await caches.open(name);
    await (isGone ? cache.delete(url, { ignoreVary: true }) : cache.put(url, found.clone()));
  }
}

/* The recipes that are kept below a folder, the last one first, each with its title as its own page says it. */
async function* keptBelow(home) {
  for (const name of (await caches.keys()).filter((each) => each.startsWith(RECIPE)).sort().reverse()) {
    const recipe = name.slice(name.indexOf(" ", RECIPE.length) + 1);
    const page = recipe.startsWith(`${home}recipes/`) && await caches.match(`${recipe}index.html`, { cacheName: name });
    const said = page && /<header class="title" lang="([^"]*)">.*?<h1>(.*?)<\/h1>/s.exec(await page.text());
    if (said) yield `<li><a href="${recipe}index.html" lang="${said[1]}">${said[2]}</a></li>`;
  }
}

/* What is shown at the address of a page that is not kept: it says so in the language of that page, with links that hold
   at any depth, and with those recipes that are kept. */
async function instead(url) {
  const homes = HOMES.map((home) => new URL(home, HOME).href);
  const home = homes.slice(1).find((each) => url.startsWith(each)) ?? homes[0];
  const page = await keptCopy(`${home}offline.html`);
  if (!page) return page;
  const items = [];
  for await (const item of keptBelow(home)) items.push(item);
  const text = (await page.text())
    .replace(/ href="(?![#/]|[a-z]+:)/g, () => ` href="${home}`)
    .replace(/<section hidden>(.*?)<\/ul>/s, (whole, before) => (items.length ? `<section>${before}${items.join("")}</ul>` : whole));
  return new Response(text, { headers: { "Content-Type": "text/html; charset=utf-8" } });
}

async function answer(event) {
  const url = plain(event.request.url);
  const kept = await keptCopy(url);
  try {
    const asked = fetch(event.request);
    if (kept) event.waitUntil(asked.then((response) => renew(url, response.clone())).catch(() => undefined));
    return await (kept ? Promise.race([asked, pause(PATIENCE)]) : asked);
  } catch (reason) {
    if (kept) return kept;
    if (event.request.mode === "navigate") return (await instead(url)) ?? Response.error();
    throw reason;
  }
}

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && isOurs(request.url) && !request.headers.has("range")) event.respondWith(answer(event));
});

/* One cache for each recipe, named by the time, so that the oldest are known; a visit makes it anew and whole. */
async function keep(recipe, urls) {
  const before = (await caches.keys()).filter((name) => name.startsWith(RECIPE));
  const cache = await caches.open(`${RECIPE}${Date.now()} ${recipe}`);
  await Promise.all([...new Set(urls.map(plain))].slice(0, MOST_FILES).map(async (url) => {
    const found = (await fresh(url).catch(() => undefined)) ?? await keptCopy(url);
    if (found) await cache.put(url, found);
  }));
  const older = before.filter((name) => name.endsWith(` ${recipe}`));
  const others = before.filter((name) => !older.includes(name)).sort();
  const tooMany = others.slice(0, Math.max(0, others.length + 1 - MOST_RECIPES));
  await Promise.all([...older, ...tooMany].map((name) => caches.delete(name)));
}

let queue = Promise.resolve();  // one after the other, so that they are counted right

self.addEventListener("message", (event) => {
  const { recipe, keep: urls } = event.data ?? {};
  if (typeof recipe !== "string" || !Array.isArray(urls)) return;
  const ours = urls.filter((url) => typeof url === "string" && isOurs(url));
  queue = queue.then(() => keep(recipe, ours)).catch(() => undefined);
  event.waitUntil(queue);
});
