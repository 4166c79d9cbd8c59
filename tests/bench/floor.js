// The floor page starts from the same service worker as the app.
navigator.serviceWorker.register("sw.js");
