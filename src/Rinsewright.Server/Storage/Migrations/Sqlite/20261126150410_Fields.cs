using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Rinsewright.Server.Storage.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Fields : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Kind",
                table: "Operations",
                type: "TEXT",
                maxLength: 32,
                nullable: false,
                defaultValue: "proof"
            );

            migrationBuilder.AddColumn<Guid>(name: "KitchenId", table: "Documents", type: "TEXT", nullable: true);

            migrationBuilder.CreateIndex(name: "IX_Documents_KitchenId", table: "Documents", column: "KitchenId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(name: "IX_Documents_KitchenId", table: "Documents");

            migrationBuilder.DropColumn(name: "Kind", table: "Operations");

            migrationBuilder.DropColumn(name: "KitchenId", table: "Documents");
        }
    }
}
