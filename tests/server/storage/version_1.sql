BEGIN TRANSACTION;
CREATE TABLE "_sqlite_migrations" (
   "id" INTEGER PRIMARY KEY,
   "migration_set" TEXT,
   "name" TEXT,
   "applied_at" TEXT
);
INSERT INTO "_sqlite_migrations" VALUES(1,'swaptrail','make_settings','2026-11-25 00:17:21.560213+00:00');
INSERT INTO "_sqlite_migrations" VALUES(2,'swaptrail','make_sessions','2026-11-25 00:17:21.560911+00:00');
INSERT INTO "_sqlite_migrations" VALUES(3,'swaptrail','make_events','2026-11-25 00:17:21.561778+00:00');
INSERT INTO "_sqlite_migrations" VALUES(4,'swaptrail','make_photos','2026-11-25 00:17:21.562378+00:00');
INSERT INTO "_sqlite_migrations" VALUES(5,'swaptrail','make_caches','2026-11-25 00:17:21.562933+00:00');
INSERT INTO "_sqlite_migrations" VALUES(6,'swaptrail','make_labels','2026-11-25 00:17:21.563474+00:00');
CREATE TABLE devices (
            device TEXT PRIMARY KEY,
            session INTEGER REFERENCES sessions(id),
            first_seen INTEGER NOT NULL,
            last_seen INTEGER NOT NULL,
            app TEXT NOT NULL DEFAULT ''
        ) STRICT;
INSERT INTO "devices" VALUES('d0123456789abcdef',1,1790000000000,1790000070000,'');
CREATE TABLE event_photos (
            sha256 TEXT NOT NULL,
            n INTEGER NOT NULL REFERENCES events(n),
            PRIMARY KEY (sha256, n)
        ) STRICT, WITHOUT ROWID;
INSERT INTO "event_photos" VALUES('abababababababababababababababababababababababababababababababab',10);
INSERT INTO "event_photos" VALUES('abababababababababababababababababababababababababababababababab',11);
INSERT INTO "event_photos" VALUES('abababababababababababababababababababababababababababababababab',12);
INSERT INTO "event_photos" VALUES('abababababababababababababababababababababababababababababababab',13);
CREATE TABLE event_units (
            unit TEXT NOT NULL,
            n INTEGER NOT NULL REFERENCES events(n),
            PRIMARY KEY (unit, n)
        ) STRICT, WITHOUT ROWID;
INSERT INTO "event_units" VALUES('v1.rear-left-inner',1);
INSERT INTO "event_units" VALUES('v1.rear-left-outer',1);
INSERT INTO "event_units" VALUES('v1.rear-right-inner',1);
INSERT INTO "event_units" VALUES('v1.rear-right-outer',1);
CREATE TABLE events (
            n INTEGER PRIMARY KEY AUTOINCREMENT,
            device TEXT NOT NULL REFERENCES devices(device),
            seq INTEGER NOT NULL,
            hash TEXT NOT NULL,
            prev TEXT NOT NULL,
            kind TEXT NOT NULL,
            job TEXT,
            body TEXT NOT NULL,
            received_at INTEGER NOT NULL,
            UNIQUE (device, seq)
        ) STRICT;
INSERT INTO "events" VALUES(1,'d0123456789abcdef',1,'2ab1b932535c599ce78225ab71ea7b08e7a40c8d27c8e07c317b039fc95735ed','','job_opened','j000000000001','{"actor":"Mara","at":1750000060000,"data":{"complaint":"beeps without reason","layout":"rear-4","part":"PS-1","positions":[{"edge":"rear","group":"rear","id":"rear-left-outer","name":"left outer","reach_minutes":2},{"edge":"rear","group":"rear","id":"rear-left-inner","name":"left inner","reach_minutes":3},{"edge":"rear","group":"rear","id":"rear-right-inner","name":"right inner","reach_minutes":3},{"edge":"rear","group":"rear","id":"rear-right-outer","name":"right outer","reach_minutes":2}],"vehicle":{"id":"v1","name":"Blue estate","vin":""}},"device":"d0123456789abcdef","job":"j000000000001","kind":"job_opened","prev":"","seq":1,"v":1}',1790000000000);
INSERT INTO "events" VALUES(2,'d0123456789abcdef',2,'58d5d9490a805e0c912e237cc05b7280d7d36eeeebf426a4395131efc390b45c','2ab1b932535c599ce78225ab71ea7b08e7a40c8d27c8e07c317b039fc95735ed','caution_acknowledged','j000000000001','{"actor":"Mara","at":1750000120000,"data":{"caution":"ground"},"device":"d0123456789abcdef","job":"j000000000001","kind":"caution_acknowledged","prev":"2ab1b932535c599ce78225ab71ea7b08e7a40c8d27c8e07c317b039fc95735ed","seq":2,"v":1}',1790000000000);
INSERT INTO "events" VALUES(3,'d0123456789abcdef',3,'37b7f1f6b06cc644f4fc8d47179665054f297e745f0fb6a6cc3400bf6ba7ca53','58d5d9490a805e0c912e237cc05b7280d7d36eeeebf426a4395131efc390b45c','caution_acknowledged','j000000000001','{"actor":"Mara","at":1750000180000,"data":{"caution":"stand"},"device":"d0123456789abcdef","job":"j000000000001","kind":"caution_acknowledged","prev":"58d5d9490a805e0c912e237cc05b7280d7d36eeeebf426a4395131efc390b45c","seq":3,"v":1}',1790000000000);
INSERT INTO "events" VALUES(4,'d0123456789abcdef',4,'e565c29a31879d6fc8226cb277cdb910e6123a32044cee74be3596c563ac214b','37b7f1f6b06cc644f4fc8d47179665054f297e745f0fb6a6cc3400bf6ba7ca53','caution_acknowledged','j000000000001','{"actor":"Mara","at":1750000240000,"data":{"caution":"airbag"},"device":"d0123456789abcdef","job":"j000000000001","kind":"caution_acknowledged","prev":"37b7f1f6b06cc644f4fc8d47179665054f297e745f0fb6a6cc3400bf6ba7ca53","seq":4,"v":1}',1790000000000);
INSERT INTO "events" VALUES(5,'d0123456789abcdef',5,'14a7d64415340bcc2b0a69c5b980cc42260252578ac38e8c62477e1f6f3eedaf','e565c29a31879d6fc8226cb277cdb910e6123a32044cee74be3596c563ac214b','caution_acknowledged','j000000000001','{"actor":"Mara","at":1750000300000,"data":{"caution":"local"},"device":"d0123456789abcdef","job":"j000000000001","kind":"caution_acknowledged","prev":"e565c29a31879d6fc8226cb277cdb910e6123a32044cee74be3596c563ac214b","seq":5,"v":1}',1790000000000);
INSERT INTO "events" VALUES(6,'d0123456789abcdef',6,'5e8b375c3c9b5d938893a75561e9378f6f6f00a4ec36858ff9c0472f5483a7e3','14a7d64415340bcc2b0a69c5b980cc42260252578ac38e8c62477e1f6f3eedaf','lamp_checked','j000000000001','{"actor":"Mara","at":1750000360000,"data":{"note":"","result":"as_it_should","when":"key_on"},"device":"d0123456789abcdef","job":"j000000000001","kind":"lamp_checked","prev":"14a7d64415340bcc2b0a69c5b980cc42260252578ac38e8c62477e1f6f3eedaf","seq":6,"v":1}',1790000000000);
INSERT INTO "events" VALUES(7,'d0123456789abcdef',7,'c40c6e454b326c9ffc12f6c86128c06239da6985ddad1c3f977b9407ce8e8c99','5e8b375c3c9b5d938893a75561e9378f6f6f00a4ec36858ff9c0472f5483a7e3','lamp_checked','j000000000001','{"actor":"Mara","at":1750000420000,"data":{"note":"","result":"as_it_should","when":"reverse"},"device":"d0123456789abcdef","job":"j000000000001","kind":"lamp_checked","prev":"5e8b375c3c9b5d938893a75561e9378f6f6f00a4ec36858ff9c0472f5483a7e3","seq":7,"v":1}',1790000000000);
INSERT INTO "events" VALUES(8,'d0123456789abcdef',8,'01f0707ddfcb5841895ae325f6fa17fae8209de267350a87d0429e1a177d7a08','c40c6e454b326c9ffc12f6c86128c06239da6985ddad1c3f977b9407ce8e8c99','looked','j000000000001','{"actor":"Mara","at":1750000480000,"data":{"note":"","positions":[{"found":"nothing","position":"rear-left-outer"},{"found":"nothing","position":"rear-left-inner"},{"found":"nothing","position":"rear-right-inner"},{"found":"nothing","position":"rear-right-outer"}]},"device":"d0123456789abcdef","job":"j000000000001","kind":"looked","prev":"c40c6e454b326c9ffc12f6c86128c06239da6985ddad1c3f977b9407ce8e8c99","seq":8,"v":1}',1790000000000);
INSERT INTO "events" VALUES(9,'d0123456789abcdef',9,'274643814c0c58b7c38af556a60dd2c357fa5ebbad6d70b45905821c51f25553','01f0707ddfcb5841895ae325f6fa17fae8209de267350a87d0429e1a177d7a08','test_run','j000000000001','{"actor":"Mara","at":1750000540000,"data":{"came_and_went":false,"codes":[],"faulted":["rear-right-outer"],"heard":true,"note":"","silent":[],"unplugged":[]},"device":"d0123456789abcdef","job":"j000000000001","kind":"test_run","prev":"01f0707ddfcb5841895ae325f6fa17fae8209de267350a87d0429e1a177d7a08","seq":9,"v":1}',1790000000000);
INSERT INTO "events" VALUES(10,'d0123456789abcdef',10,'a4e9c24d2d2ac801e09197c4136612f012738293c07152cca4fcda826766af62','274643814c0c58b7c38af556a60dd2c357fa5ebbad6d70b45905821c51f25553','photo_taken','j000000000001','{"actor":"Mara","at":1750000600000,"data":{"bytes":1000,"height":30,"mime":"image/jpeg","position":"rear-left-outer","sha256":"abababababababababababababababababababababababababababababababab","shows":"position","unit":"","width":40},"device":"d0123456789abcdef","job":"j000000000001","kind":"photo_taken","prev":"274643814c0c58b7c38af556a60dd2c357fa5ebbad6d70b45905821c51f25553","seq":10,"v":1}',1790000000000);
INSERT INTO "events" VALUES(11,'d0123456789abcdef',11,'0bf9b2daa1866ff534aad6510233344785d630acf165d615d30fe605b4aca30a','a4e9c24d2d2ac801e09197c4136612f012738293c07152cca4fcda826766af62','photo_taken','j000000000001','{"actor":"Mara","at":1750000660000,"data":{"bytes":1000,"height":30,"mime":"image/jpeg","position":"rear-left-inner","sha256":"abababababababababababababababababababababababababababababababab","shows":"position","unit":"","width":40},"device":"d0123456789abcdef","job":"j000000000001","kind":"photo_taken","prev":"a4e9c24d2d2ac801e09197c4136612f012738293c07152cca4fcda826766af62","seq":11,"v":1}',1790000000000);
INSERT INTO "events" VALUES(12,'d0123456789abcdef',12,'94bc3dbb88a4ae7d4b59fb7d57905805398aabdc6ad56f56414915b83760f662','0bf9b2daa1866ff534aad6510233344785d630acf165d615d30fe605b4aca30a','photo_taken','j000000000001','{"actor":"Mara","at":1750000720000,"data":{"bytes":1000,"height":30,"mime":"image/jpeg","position":"rear-right-inner","sha256":"abababababababababababababababababababababababababababababababab","shows":"position","unit":"","width":40},"device":"d0123456789abcdef","job":"j000000000001","kind":"photo_taken","prev":"0bf9b2daa1866ff534aad6510233344785d630acf165d615d30fe605b4aca30a","seq":12,"v":1}',1790000000000);
INSERT INTO "events" VALUES(13,'d0123456789abcdef',13,'530361874a652acd4ebcf0dd1c5e66cc2ee55f2a74459c706457a51453ea63c0','94bc3dbb88a4ae7d4b59fb7d57905805398aabdc6ad56f56414915b83760f662','photo_taken','j000000000001','{"actor":"Mara","at":1750000780000,"data":{"bytes":1000,"height":30,"mime":"image/jpeg","position":"rear-right-outer","sha256":"abababababababababababababababababababababababababababababababab","shows":"position","unit":"","width":40},"device":"d0123456789abcdef","job":"j000000000001","kind":"photo_taken","prev":"94bc3dbb88a4ae7d4b59fb7d57905805398aabdc6ad56f56414915b83760f662","seq":13,"v":1}',1790000000000);
INSERT INTO "events" VALUES(14,'d0123456789abcdef',14,'9db6bb0e51fd0203b920d56adcd6daad9ba9c6cf896305bc915343c98107f3dc','530361874a652acd4ebcf0dd1c5e66cc2ee55f2a74459c706457a51453ea63c0','move_started','j000000000001','{"actor":"Mara","at":1750000840000,"data":{"fitted":{"rear-right-inner":"v1.rear-right-outer","rear-right-outer":"v1.rear-right-inner"},"move":"exchange","position":"","reason":"to see"},"device":"d0123456789abcdef","job":"j000000000001","kind":"move_started","prev":"530361874a652acd4ebcf0dd1c5e66cc2ee55f2a74459c706457a51453ea63c0","seq":14,"v":1}',1790000000000);
INSERT INTO "events" VALUES(15,'d0123456789abcdef',15,'ea8573e1f83eb923318b95df64c53e466ec40538408652ac4fd568d855078ab5','9db6bb0e51fd0203b920d56adcd6daad9ba9c6cf896305bc915343c98107f3dc','unit_pulled','j000000000001','{"actor":"Mara","at":1750000900000,"data":{"how":"tapped","position":"rear-right-inner","unit":"v1.rear-right-inner"},"device":"d0123456789abcdef","job":"j000000000001","kind":"unit_pulled","prev":"9db6bb0e51fd0203b920d56adcd6daad9ba9c6cf896305bc915343c98107f3dc","seq":15,"v":1}',1790000000000);
INSERT INTO "events" VALUES(16,'d0123456789abcdef',16,'463a48470ccfb74944586ee2a17e2d94454ea6744bfcd76c77e008e723b473ee','ea8573e1f83eb923318b95df64c53e466ec40538408652ac4fd568d855078ab5','unit_labelled','j000000000001','{"actor":"Mara","at":1750000960000,"data":{"code":"WM3F2","how":"scanned","unit":"v1.rear-right-inner"},"device":"d0123456789abcdef","job":"j000000000001","kind":"unit_labelled","prev":"ea8573e1f83eb923318b95df64c53e466ec40538408652ac4fd568d855078ab5","seq":16,"v":1}',1790000000000);
INSERT INTO "events" VALUES(17,'d0123456789abcdef',17,'53f634153c126c30a050a64f96ebb65ba403b827e32fd0d45416ff0eeafa4c50','463a48470ccfb74944586ee2a17e2d94454ea6744bfcd76c77e008e723b473ee','unit_pulled','j000000000001','{"actor":"Mara","at":1750001020000,"data":{"how":"tapped","position":"rear-right-outer","unit":"v1.rear-right-outer"},"device":"d0123456789abcdef","job":"j000000000001","kind":"unit_pulled","prev":"463a48470ccfb74944586ee2a17e2d94454ea6744bfcd76c77e008e723b473ee","seq":17,"v":1}',1790000000000);
INSERT INTO "events" VALUES(18,'d0123456789abcdef',18,'7de855c7d50bfc1a8a35c4d872f1207441f04a93fbc7b87dc6611727184540a8','53f634153c126c30a050a64f96ebb65ba403b827e32fd0d45416ff0eeafa4c50','unit_labelled','j000000000001','{"actor":"Mara","at":1750001080000,"data":{"code":"9MT9F","how":"scanned","unit":"v1.rear-right-outer"},"device":"d0123456789abcdef","job":"j000000000001","kind":"unit_labelled","prev":"53f634153c126c30a050a64f96ebb65ba403b827e32fd0d45416ff0eeafa4c50","seq":18,"v":1}',1790000000000);
INSERT INTO "events" VALUES(19,'d0123456789abcdef',19,'7f842493cf59055228fe640a171677d39bcbcec7351960132b52cfd8884cdf39','7de855c7d50bfc1a8a35c4d872f1207441f04a93fbc7b87dc6611727184540a8','unit_fitted','j000000000001','{"actor":"Mara","at":1750001140000,"data":{"how":"scanned","override":"","position":"rear-right-inner","unit":"v1.rear-right-outer"},"device":"d0123456789abcdef","job":"j000000000001","kind":"unit_fitted","prev":"7de855c7d50bfc1a8a35c4d872f1207441f04a93fbc7b87dc6611727184540a8","seq":19,"v":1}',1790000000000);
INSERT INTO "events" VALUES(20,'d0123456789abcdef',20,'85121115e19090d6bada39bfb948365612abb79b61cefbc776c2c1ec10edacbd','7f842493cf59055228fe640a171677d39bcbcec7351960132b52cfd8884cdf39','connector_locked','j000000000001','{"actor":"Mara","at":1750001200000,"data":{"position":"rear-right-inner"},"device":"d0123456789abcdef","job":"j000000000001","kind":"connector_locked","prev":"7f842493cf59055228fe640a171677d39bcbcec7351960132b52cfd8884cdf39","seq":20,"v":1}',1790000000000);
INSERT INTO "events" VALUES(21,'d0123456789abcdef',21,'27d1270bfd175472d38572b7669d79cf6bdef67697f97ea5e75ddb31e146beba','85121115e19090d6bada39bfb948365612abb79b61cefbc776c2c1ec10edacbd','unit_fitted','j000000000001','{"actor":"Mara","at":1750001260000,"data":{"how":"scanned","override":"","position":"rear-right-outer","unit":"v1.rear-right-inner"},"device":"d0123456789abcdef","job":"j000000000001","kind":"unit_fitted","prev":"85121115e19090d6bada39bfb948365612abb79b61cefbc776c2c1ec10edacbd","seq":21,"v":1}',1790000060000);
INSERT INTO "events" VALUES(22,'d0123456789abcdef',22,'82031c73e074718b52f29947595cdcfced0335856bff29a313921e6269733563','27d1270bfd175472d38572b7669d79cf6bdef67697f97ea5e75ddb31e146beba','connector_locked','j000000000001','{"actor":"Mara","at":1750001320000,"data":{"position":"rear-right-outer"},"device":"d0123456789abcdef","job":"j000000000001","kind":"connector_locked","prev":"27d1270bfd175472d38572b7669d79cf6bdef67697f97ea5e75ddb31e146beba","seq":22,"v":1}',1790000060000);
INSERT INTO "events" VALUES(23,'d0123456789abcdef',23,'e96f4a577f78d01172c3c8932f5afa97ec504ffb8ac8f717db442b1f2fb131fe','82031c73e074718b52f29947595cdcfced0335856bff29a313921e6269733563','test_run','j000000000001','{"actor":"Mara","at":1750001380000,"data":{"came_and_went":false,"codes":[],"faulted":["rear-right-outer"],"heard":true,"note":"","silent":[],"unplugged":[]},"device":"d0123456789abcdef","job":"j000000000001","kind":"test_run","prev":"82031c73e074718b52f29947595cdcfced0335856bff29a313921e6269733563","seq":23,"v":1}',1790000060000);
INSERT INTO "events" VALUES(24,'d0123456789abcdef',24,'0443abe2eacfc5b57a83982ea01723a9e3e844269f2dc5b24fb7623acb955437','e96f4a577f78d01172c3c8932f5afa97ec504ffb8ac8f717db442b1f2fb131fe','corrected','j000000000001','{"actor":"Mara","at":1750001440000,"data":{"device":"d0123456789abcdef","reason":"read the wrong line","seq":23},"device":"d0123456789abcdef","job":"j000000000001","kind":"corrected","prev":"e96f4a577f78d01172c3c8932f5afa97ec504ffb8ac8f717db442b1f2fb131fe","seq":24,"v":1}',1790000060000);
INSERT INTO "events" VALUES(25,'d0123456789abcdef',25,'9cf319a6325b23bd56317502502282e69e0953208e53823d0ff6839c1e9ab260','0443abe2eacfc5b57a83982ea01723a9e3e844269f2dc5b24fb7623acb955437','test_run','j000000000001','{"actor":"Mara","at":1750001500000,"data":{"came_and_went":false,"codes":[],"faulted":["rear-right-inner"],"heard":true,"note":"","silent":[],"unplugged":[]},"device":"d0123456789abcdef","job":"j000000000001","kind":"test_run","prev":"0443abe2eacfc5b57a83982ea01723a9e3e844269f2dc5b24fb7623acb955437","seq":25,"v":1}',1790000060000);
INSERT INTO "events" VALUES(26,'d0123456789abcdef',26,'ffc04f18d146b605ae7e799954ed3eef5bd70b6e6b111bf28b5776fdd5493486','9cf319a6325b23bd56317502502282e69e0953208e53823d0ff6839c1e9ab260','sensor_painted','j000000000001','{"actor":"Mara","at":1750001560000,"data":{"colour":"blue"},"device":"d0123456789abcdef","job":"j000000000001","kind":"sensor_painted","prev":"9cf319a6325b23bd56317502502282e69e0953208e53823d0ff6839c1e9ab260","seq":26,"v":1}',1790000060000);
CREATE TABLE job_cache (
                question TEXT PRIMARY KEY,
                upto INTEGER NOT NULL,
                core TEXT NOT NULL,
                answer TEXT NOT NULL
            ) STRICT;
INSERT INTO "job_cache" VALUES('{"op":"jobs"}',3,'of an older core','[]');
CREATE TABLE label_batches (
            id INTEGER PRIMARY KEY,
            made_at INTEGER NOT NULL,
            base TEXT NOT NULL
        ) STRICT;
INSERT INTO "label_batches" VALUES(1,1790000000000,'http://localhost:8765');
CREATE TABLE labels (
            code TEXT PRIMARY KEY,
            batch INTEGER NOT NULL REFERENCES label_batches(id)
        ) STRICT;
INSERT INTO "labels" VALUES('7R3JJ',1);
INSERT INTO "labels" VALUES('DDMMR',1);
INSERT INTO "labels" VALUES('Y4DMP',1);
CREATE TABLE pairings (
            token_hash TEXT PRIMARY KEY,
            made_by INTEGER REFERENCES sessions(id),
            made_at INTEGER NOT NULL,
            expires_at INTEGER NOT NULL,
            uses_left INTEGER NOT NULL CHECK (uses_left >= 0)
        ) STRICT;
CREATE TABLE photos (
            sha256 TEXT PRIMARY KEY,
            bytes INTEGER NOT NULL,
            width INTEGER NOT NULL,
            height INTEGER NOT NULL,
            stored_at INTEGER NOT NULL
        ) STRICT;
CREATE TABLE quarantine (
            id INTEGER PRIMARY KEY,
            device TEXT NOT NULL,
            seq INTEGER NOT NULL,
            hash TEXT NOT NULL,
            body TEXT NOT NULL,
            reason TEXT NOT NULL,
            received_at INTEGER NOT NULL,
            UNIQUE (device, seq, hash)
        ) STRICT;
INSERT INTO "quarantine" VALUES(1,'d0123456789abcdef',26,'46160825f15f8ead805c8136da95712303dfd59dde8e7b4705dc99f363a235c3','{"actor":"Mara","at":1750001560000,"data":{"colour":"red"},"device":"d0123456789abcdef","job":"j000000000001","kind":"sensor_painted","prev":"9cf319a6325b23bd56317502502282e69e0953208e53823d0ff6839c1e9ab260","seq":26,"v":1}','Another event 26 of this device is kept already, so two phones use one identity. Both are kept; this phone goes on as a new device.',1790000070000);
CREATE TABLE sessions (
            id INTEGER PRIMARY KEY,
            token_hash TEXT NOT NULL UNIQUE,
            name TEXT NOT NULL,
            created_at INTEGER NOT NULL,
            revoked_at INTEGER
        ) STRICT;
INSERT INTO "sessions" VALUES(1,'abababababababababababababababababababababababababababababababab','Mara',1790000000000,NULL);
CREATE TABLE settings (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
INSERT INTO "settings" VALUES('installation','6a5cb28b366681d3');
INSERT INTO "settings" VALUES('base_address','http://localhost:8765');
CREATE TABLE unit_cache (
                question TEXT PRIMARY KEY,
                upto INTEGER NOT NULL,
                core TEXT NOT NULL,
                answer TEXT NOT NULL
            ) STRICT;
CREATE UNIQUE INDEX "idx__sqlite_migrations_migration_set_name"
    ON "_sqlite_migrations" ("migration_set", "name");
CREATE INDEX devices_by_session ON devices (session);
CREATE INDEX events_by_job ON events (job, n);
CREATE TRIGGER events_refuse_update BEFORE UPDATE ON events
            BEGIN SELECT RAISE(ABORT, 'events are only ever appended'); END;
CREATE TRIGGER events_refuse_delete BEFORE DELETE ON events
            BEGIN SELECT RAISE(ABORT, 'events are only ever appended'); END;
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('events',26);
COMMIT;
