using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Rinsewright.Server.Storage.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Places : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateIndex(name: "IX_Operations_Revision", table: "Operations", column: "Revision");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(name: "IX_Operations_Revision", table: "Operations");
        }
    }
}
