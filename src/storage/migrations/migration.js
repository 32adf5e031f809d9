// What a migration is: a numbered step forward, run once, inside a transaction.
export {};
//# sourceMappingURL=migration.js.map