using System.Net;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Text;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Server.Tests.Records;

/// <summary>Original files come back byte for byte, under their hash, or not at all.</summary>
public sealed class FileTests
{
    private static readonly byte[] Content = Encoding.UTF8.GetBytes("Time,Plate (°F)\n2026-11-20 13:35:00,71.5\n");

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task File_comes_back_byte_for_byte_and_a_second_send_changes_nothing(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var address = Address(Hash(Content));
        Assert.Equal(HttpStatusCode.Created, await PutAsync(client, address, Content));
        Assert.Equal(HttpStatusCode.OK, await PutAsync(client, address, Content));
        using var response = await client.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(Content, await response.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.Equal("attachment", response.Content.Headers.ContentDisposition!.DispositionType); // never shown as a page of ours
        Assert.Equal("application/octet-stream", response.Content.Headers.ContentType!.MediaType);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Damaged_file_is_refused_and_nothing_of_it_is_kept(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var address = Address(Hash(Content));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PutAsync(client, address, [.. Content, 0]));
        using var response = await client.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(server.Folder, "files"), "*", SearchOption.AllDirectories));
    }

    /// <summary>A server that died while a file came in leaves a part of it behind: the next one that starts clears it, and none that may still be arriving elsewhere.</summary>
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Parts_that_a_killed_server_left_are_cleared_at_the_next_start(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        Assert.Equal(HttpStatusCode.Created, await PutAsync(client, Address(Hash(Content)), Content));
        var files = Path.Combine(server.Folder, "files");
        var (left, young) = (Path.Combine(files, "arriving-left"), Path.Combine(files, "arriving-young"));
        await File.WriteAllBytesAsync(left, [1], TestContext.Current.CancellationToken);
        await File.WriteAllBytesAsync(young, [2], TestContext.Current.CancellationToken);
        File.SetLastWriteTimeUtc(left, DateTime.UtcNow.AddDays(-2));

        await using var next = server.Again();
        using var again = next.CreateClient();
        using var response = await again.GetAsync(Address(Hash(Content)), TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.False(File.Exists(left));
        Assert.True(File.Exists(young));
    }

    [Theory]
    [OnBoth("..%2F..%2Frinsewright.db")]
    [OnBoth("E3B0C44298FC1C149AFBF4C8996FB92427AE41E4649B934CA495991B7852B855")]
    [OnBoth("abc")]
    public async Task What_is_not_a_hash_names_no_file(Database database, string name)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        Assert.Equal(HttpStatusCode.BadRequest, await PutAsync(client, Address(name), Content));
        using var response = await client.GetAsync(Address(name), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
    }

    /// <summary>A folder of files put back to an older copy: whoever names a lost one is told to send it again.</summary>
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Operations_that_name_a_file_the_store_does_not_have_are_kept_and_it_is_asked_for(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var (logger, photograph, plate) = (Hash([1]), Hash([2]), Hash([3]));
        await PutAsync(client, Address(plate), [3]);
        Operation[] operations =
        [
            Prove(logger),
            Set(Kinds.Visit, "record.photos", $$"""[{"sha256":"{{photograph}}","moment":"asFound"}]"""),
            Set(Kinds.Visit, "record.photos", "not a list"),
            Set(Kinds.Machine, MachinePaths.Photograph, plate),
            Set(Kinds.Kitchen, KitchenPaths.Note, logger),
        ];
        for (var send = 0; send < 2; send++)
        {
            using var response = await client.PostOperationsAsync(operations);
            var answer = (await response.Content.ReadFromJsonAsync<OperationResults>(TestContext.Current.CancellationToken))!;
            Assert.All(answer.Results, r => Assert.Equal("applied", r.Outcome));
            Assert.Equal([logger, photograph], answer.WantedFiles);
        }

        await PutAsync(client, Address(logger), [1]);
        await PutAsync(client, Address(photograph), [2]);
        using var after = await client.PostOperationsAsync(operations);
        Assert.Null((await after.Content.ReadFromJsonAsync<OperationResults>(TestContext.Current.CancellationToken))!.WantedFiles);

        static Operation Set(string kind, string path, string value) =>
            new(
                Guid.CreateVersion7(),
                kind,
                Guid.CreateVersion7(),
                "",
                "phone",
                Invented.Morning,
                "set",
                null,
                [new FieldChange(path, value, 1)]
            );
    }

    /// <summary>The folder of files alone was put back to an older copy: no operation tells of it, so the server looks when it starts and asks with every answer.</summary>
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Files_that_documents_name_and_the_folder_lost_are_asked_for_after_a_start(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var (logger, plate) = (Hash([1]), Hash([2]));
        await PutAsync(client, Address(logger), [1]);
        await PutAsync(client, Address(plate), [2]);
        await client.SendAsync(Prove(logger));
        Assert.Null((await client.ChangesAsync("")).WantedFiles);

        foreach (var file in Directory.EnumerateFiles(Path.Combine(server.Folder, "files"), "*", SearchOption.AllDirectories))
        {
            File.Delete(file);
        }

        await using var again = server.Again();
        using var device = again.CreateClient();
        IReadOnlyList<string>? wanted = null;
        for (var i = 0; i < 200 && wanted is null; i++) // it looks while it already answers
        {
            wanted = (await device.ChangesAsync("")).WantedFiles;
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        Assert.Equal([logger], wanted);
        await PutAsync(device, Address(logger), [1]);
        Assert.Null((await device.ChangesAsync("")).WantedFiles);
    }

    private static Operation Prove(string logger)
    {
        var proof = Guid.CreateVersion7();
        return new(
            Guid.CreateVersion7(),
            Kinds.Proof,
            proof,
            "",
            "phone",
            Invented.Morning,
            "put",
            Invented.Proof(proof) with
            {
                Files = [new FileReference(logger, "plate.csv", 1)],
            }
        );
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Eight_devices_may_send_the_same_file_at_once(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var large = new byte[1 << 20];
        new Random(7).NextBytes(large);
        var address = Address(Hash(large));
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => PutAsync(client, address, large))));
        Assert.All(answers, a => Assert.True(a is HttpStatusCode.Created or HttpStatusCode.OK, a.ToString()));
        Assert.Equal(large, await client.GetByteArrayAsync(address, TestContext.Current.CancellationToken));
        Assert.Single(Directory.EnumerateFiles(Path.Combine(server.Folder, "files"), "*", SearchOption.AllDirectories));
    }

    private static async Task<HttpStatusCode> PutAsync(HttpClient client, Uri address, byte[] content)
    {
        using var body = new ByteArrayContent(content);
        using var response = await client.PutAsync(address, body, TestContext.Current.CancellationToken);
        return response.StatusCode;
    }

    private static Uri Address(string hash) => new("api/files/" + hash, UriKind.Relative);

    private static string Hash(byte[] content) => Convert.ToHexStringLower(SHA256.HashData(content));
}
