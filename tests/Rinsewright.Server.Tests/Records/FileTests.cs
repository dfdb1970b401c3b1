using System.Net;
using System.Security.Cryptography;
using System.Text;

namespace Rinsewright.Server.Tests.Records;

/// <summary>Original files come back byte for byte, under their hash, or not at all.</summary>
public sealed class FileTests
{
    private static readonly byte[] Content = Encoding.UTF8.GetBytes("Time,Plate (°F)\n2026-11-20 13:35:00,71.5\n");

    [Fact]
    public async Task File_comes_back_byte_for_byte_and_a_second_send_changes_nothing()
    {
        await using var server = await TestServer.MakeAsync();
        using var client = server.CreateClient();
        var address = Address(Hash(Content));
        Assert.Equal(HttpStatusCode.Created, await PutAsync(client, address, Content));
        Assert.Equal(HttpStatusCode.OK, await PutAsync(client, address, Content));
        using var response = await client.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(Content, await response.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        Assert.Equal("attachment", response.Content.Headers.ContentDisposition!.DispositionType); // never shown as a page of ours
        Assert.Equal("application/octet-stream", response.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task Damaged_file_is_refused_and_nothing_of_it_is_kept()
    {
        await using var server = await TestServer.MakeAsync();
        using var client = server.CreateClient();
        var address = Address(Hash(Content));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PutAsync(client, address, [.. Content, 0]));
        using var response = await client.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(server.Folder, "files"), "*", SearchOption.AllDirectories));
    }

    [Theory]
    [InlineData("..%2F..%2Frinsewright.db")]
    [InlineData("E3B0C44298FC1C149AFBF4C8996FB92427AE41E4649B934CA495991B7852B855")]
    [InlineData("abc")]
    public async Task What_is_not_a_hash_names_no_file(string name)
    {
        await using var server = await TestServer.MakeAsync();
        using var client = server.CreateClient();
        Assert.Equal(HttpStatusCode.BadRequest, await PutAsync(client, Address(name), Content));
        using var response = await client.GetAsync(Address(name), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
    }

    [Fact]
    public async Task Eight_devices_may_send_the_same_file_at_once()
    {
        await using var server = await TestServer.MakeAsync();
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
