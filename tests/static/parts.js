// What tests try of the phone app one by one, or put together without its screens (phone_parts.py): joined
// into one file, for a built app has no file a module.
export * from '../../static/alone/history-file.js';
export * from '../../static/alone/saved.js';
export * from '../../static/alone/stake.js';
export * from '../../static/alone/take-in-history.js';
export * from '../../static/core/client.js';
export * from '../../static/core/compact.js';
export * from '../../static/log/append.js';
export * from '../../static/log/canonical.js';
export * from '../../static/log/device.js';
export * from '../../static/log/log.js';
export * from '../../static/log/space.js';
export * from '../../static/log/store.js';
export * from '../../static/log/take-in.js';
export * from '../../static/phone/tones.js';
export * from '../../static/phone/update.js';
export * from '../../static/photos/photos.js';
export * from '../../static/photos/picture-file.js';
export * from '../../static/screens/frame/router.js';
export * from '../../static/screens/scan/alarm.js';
export * from '../../static/screens/scan/label-reader.js';
export * from '../../static/sync/received.js';
export * from '../../static/sync/sync.js';
export * from '../../static/words/speech.js';
export * from '../../static/words/words.js';
