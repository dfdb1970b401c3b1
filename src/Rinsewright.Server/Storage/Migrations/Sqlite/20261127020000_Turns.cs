using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Rinsewright.Server.Storage.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Turns : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Turns",
                columns: table => new
                {
                    Number = table.Column<long>(type: "INTEGER", nullable: false),
                    Tag = table.Column<Guid>(type: "TEXT", nullable: false),
                },
                constraints: table => table.PrimaryKey("PK_Turns", t => t.Number)
            );

            // What was taken in before there were tags is known by its operations.
            migrationBuilder.Sql(
                """INSERT INTO "Turns" ("Number", "Tag") SELECT "Revision", '00000000-0000-0000-0000-000000000000' FROM "Store" WHERE "Revision" > 0"""
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "Turns");
        }
    }
}
