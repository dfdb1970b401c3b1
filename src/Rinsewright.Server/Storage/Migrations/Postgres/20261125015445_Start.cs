using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Rinsewright.Server.Storage.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Start : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Documents",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: false),
                    Json = table.Column<string>(type: "text", nullable: true),
                    OperationId = table.Column<Guid>(type: "uuid", nullable: false),
                    WrittenAt = table.Column<long>(type: "bigint", nullable: false),
                    Revision = table.Column<long>(type: "bigint", nullable: false),
                    Versions = table.Column<int>(type: "integer", nullable: false),
                    Demo = table.Column<bool>(type: "boolean", nullable: false),
                    Author = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    StatedAt = table.Column<long>(type: "bigint", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    OffsetMinutes = table.Column<int>(type: "integer", nullable: false),
                    Kitchen = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Machine = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Technician = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Verdict = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: false),
                    Passes = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Documents", x => x.Id);
                }
            );

            migrationBuilder.CreateTable(
                name: "Operations",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    DocumentId = table.Column<Guid>(type: "uuid", nullable: false),
                    Action = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: false),
                    Author = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Device = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    StatedAt = table.Column<long>(type: "bigint", nullable: false),
                    ReceivedAt = table.Column<long>(type: "bigint", nullable: false),
                    Outcome = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: false),
                    Revision = table.Column<long>(type: "bigint", nullable: false),
                    Replaced = table.Column<Guid>(type: "uuid", nullable: true),
                    Json = table.Column<string>(type: "text", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Operations", x => x.Id);
                }
            );

            migrationBuilder.CreateTable(
                name: "Store",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false),
                    StoreId = table.Column<Guid>(type: "uuid", nullable: false),
                    Revision = table.Column<long>(type: "bigint", nullable: false),
                    DemoSeededAt = table.Column<long>(type: "bigint", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Store", x => x.Id);
                }
            );

            migrationBuilder.CreateIndex(name: "IX_Documents_Kind_MadeAt", table: "Documents", columns: new[] { "Kind", "MadeAt" });

            migrationBuilder.CreateIndex(name: "IX_Documents_Revision", table: "Documents", column: "Revision", unique: true);

            migrationBuilder.CreateIndex(name: "IX_Operations_DocumentId", table: "Operations", column: "DocumentId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "Documents");

            migrationBuilder.DropTable(name: "Operations");

            migrationBuilder.DropTable(name: "Store");
        }
    }
}
