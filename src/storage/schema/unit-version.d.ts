export declare const unitVersionTable: import("./column.ts").TableDescription<"unitVersion">;
