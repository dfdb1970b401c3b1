using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Tests.Hosting;

/// <summary>Who and what is kept out.</summary>
public sealed class GateTests
{
    [Theory]
    [InlineData("localhost", HttpStatusCode.OK)]
    [InlineData("127.0.0.1:5230", HttpStatusCode.OK)]
    [InlineData("[::1]:5230", HttpStatusCode.OK)]
    [InlineData("tamarack.example", HttpStatusCode.BadRequest)]
    [InlineData("localhost.tamarack.example", HttpStatusCode.BadRequest)]
    public async Task Only_the_own_names_of_this_computer_are_answered(string host, HttpStatusCode expected)
    {
        await using var server = await TestServer.OnSqliteAloneAsync("The gate stands before any data.");
        using var client = server.OnSocket();
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri("api/proofs", UriKind.Relative));
        request.Headers.Host = host;
        using var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(expected, response.StatusCode);
    }

    [Theory]
    [InlineData("Sec-Fetch-Site", "cross-site", HttpStatusCode.Forbidden)]
    [InlineData("Sec-Fetch-Site", "same-site", HttpStatusCode.Forbidden)]
    [InlineData("Sec-Fetch-Site", "same-origin", HttpStatusCode.OK)]
    [InlineData("Origin", "https://tamarack.example", HttpStatusCode.Forbidden)]
    [InlineData("Origin", "http://localhost:8080", HttpStatusCode.Forbidden)]
    [InlineData("Origin", "null", HttpStatusCode.Forbidden)]
    [InlineData("Origin", "http://localhost", HttpStatusCode.OK)]
    [InlineData("Origin", "https://localhost", HttpStatusCode.OK)] // behind a proxy that speaks HTTPS
    [InlineData("X-Nothing", "1", HttpStatusCode.OK)] // a program that is no browser
    public async Task Changes_from_pages_of_other_sites_are_refused(string header, string value, HttpStatusCode expected)
    {
        await using var server = await TestServer.OnSqliteAloneAsync("The gate stands before any data.");
        using var client = server.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("api/operations", UriKind.Relative))
        {
            Content = new StringContent("[]", Encoding.UTF8, "application/json"),
        };
        request.Headers.Add(header, value);
        using var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(expected, response.StatusCode);
    }

    [Theory]
    [InlineData("DELETE", "api/demo")]
    [InlineData("PUT", "api/files/e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    [InlineData("POST", "api/sanitization/proof")]
    public async Task Every_kind_of_change_is_refused_from_another_site(string method, string path)
    {
        await using var server = await TestServer.OnSqliteAloneAsync("The gate stands before any data.");
        using var client = server.CreateClient();
        using var request = new HttpRequestMessage(new HttpMethod(method), new Uri(path, UriKind.Relative));
        request.Headers.Add("Sec-Fetch-Site", "cross-site");
        request.Headers.Add(SameOrigin.Header, "1");
        using var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
    }

    [Fact]
    public async Task Form_without_the_own_header_is_refused()
    {
        await using var server = await TestServer.OnSqliteAloneAsync("The gate stands before any data.");
        using var client = server.CreateClient();
        using var form = new MultipartFormDataContent { { new StringContent("{}"), "request" } };
        using var response = await client.PostAsync(
            new Uri("api/sanitization/proof", UriKind.Relative),
            form,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
        Assert.Contains(
            SameOrigin.Header,
            await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("POST", "api/operations", 9 << 20, "application/json")]
    [InlineData(
        "PUT",
        "api/files/e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        (64 << 20) + 1,
        "application/octet-stream"
    )]
    public async Task What_is_too_large_is_refused_with_the_limit(string method, string path, int bytes, string type)
    {
        await using var server = await TestServer.OnSqliteAloneAsync("The gate stands before any data.");
        using var client = server.OnSocket();
        using var request = new HttpRequestMessage(new HttpMethod(method), new Uri(path, UriKind.Relative))
        {
            Content = new StreamContent(new Spaces(bytes)),
        };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue(type);
        request.Headers.ExpectContinue = true;
        using var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, response.StatusCode);
        Assert.Contains("64 MB", await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://127.0.0.1:5230", true)]
    [InlineData("http://127.8.0.1:80", true)]
    [InlineData("http://localhost:5230", true)]
    [InlineData("http://[::1]:5230", true)]
    [InlineData("http://unix:/run/rinsewright.sock", true)]
    [InlineData("http://0.0.0.0:5230", false)]
    [InlineData("http://[::]:5230", false)]
    [InlineData("http://*:5230", false)]
    [InlineData("http://+:5230", false)]
    [InlineData("http://192.168.1.20:5230", false)]
    [InlineData("https://tamarack.example", false)]
    [InlineData("127.0.0.1", false)] // not an address the server could listen on
    public void An_address_is_open_unless_it_is_of_this_computer_alone(string address, bool local) =>
        Assert.Equal(local, Listening.IsLocal(address));

    private sealed class Spaces(long length) : Stream
    {
        private long position;

        public override bool CanRead => true;

        public override bool CanSeek => true;

        public override bool CanWrite => false;

        public override long Length => length;

        public override long Position
        {
            get => position;
            set => position = value;
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var read = (int)Math.Min(count, length - position);
            Array.Fill(buffer, (byte)' ', offset, read);
            position += read;
            return read;
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override void Flush()
        {
            // nothing is buffered
        }
    }
}
