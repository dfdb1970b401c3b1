using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Xunit.v3;

namespace Rinsewright.Server.Tests;

/// <summary>The real server in this process, on a data folder and a database of its own.</summary>
public sealed class TestServer : WebApplicationFactory<Program>
{
    private readonly Dictionary<string, string?> settings = new(StringComparer.Ordinal);
    private readonly TimeProvider? clock;
    private readonly OwnPostgres? postgres;

    private TestServer(string folder, OwnPostgres? postgres, TimeProvider? clock)
    {
        Folder = folder;
        this.postgres = postgres;
        this.clock = clock;
        settings["Rinsewright:Data"] = folder;
        settings["Rinsewright:Demo"] = "false";
        settings["Logging:LogLevel:Microsoft.AspNetCore.Routing.EndpointRoutingMiddleware"] = "None"; // the in-process server has no body limits and says so each time
        settings["Rinsewright:Database"] = postgres?.Connection;
    }

    /// <summary>Data folder.</summary>
    public string Folder { get; }

    /// <summary>How to reach its PostgreSQL database; null on SQLite.</summary>
    public string? PostgresConnection => postgres?.Connection;

    /// <summary>Makes a server without the demo; it starts at the first client. Only for a test that is given its database, so that it runs on both (<see cref="BothDatabasesTests"/>).</summary>
    public static Task<TestServer> MakeAsync(Database database, TimeProvider? clock = null, params (string Key, string Value)[] more)
    {
        var test = (TestContext.Current.TestMethod as IXunitTestMethod)?.Method;
        Assert.True(
            test is not null && BothDatabasesTests.IsGivenItsDatabase(test),
            $"{test?.Name} runs on {database} only. Give it a parameter for the database and both values, or say at {nameof(OnSqliteAloneAsync)} why one will do."
        );
        return StartAsync(database, clock, more);
    }

    /// <summary>Makes a server on SQLite, for a test in which the other database could change nothing, and says why it could not.</summary>
    public static Task<TestServer> OnSqliteAloneAsync(string why)
    {
        Assert.NotEmpty(why);
        return StartAsync(Database.Sqlite, null, []);
    }

    private static async Task<TestServer> StartAsync(Database database, TimeProvider? clock, (string Key, string Value)[] more)
    {
        var own = database == Database.Postgres ? await OwnPostgres.MakeAsync() : null;
        var server = new TestServer(Path.Combine(Path.GetTempPath(), $"rinsewright-{Guid.CreateVersion7():n}"), own, clock);
        foreach (var (key, value) in more)
        {
            server.settings[key] = value;
        }

        return server;
    }

    /// <summary>Another server process on the same data.</summary>
    public TestServer Again()
    {
        var again = new TestServer(Folder, null, clock);
        foreach (var (key, value) in settings)
        {
            again.settings[key] = value;
        }

        return again;
    }

    /// <summary>The same server on a socket.</summary>
    public HttpClient OnSocket()
    {
        UseKestrel(0);
        StartServer();
        // On a busy machine the answer to a body that is too large may take a while: wait for it before sending the body.
        var handler = new SocketsHttpHandler { Expect100ContinueTimeout = TimeSpan.FromSeconds(60) };
        return new HttpClient(handler) { BaseAddress = ClientOptions.BaseAddress };
    }

    /// <summary>Stops it and removes what it kept.</summary>
    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        SqliteConnection.ClearAllPools();
        if (postgres is not null)
        {
            await postgres.DisposeAsync();
        }

        if (Directory.Exists(Folder))
        {
            Directory.Delete(Folder, recursive: true);
        }

        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        foreach (var (key, value) in settings.Where(s => s.Value is not null))
        {
            builder.UseSetting(key, value);
        }

        builder.ConfigureTestServices(s => s.AddSingleton<IStartupFilter, RemoteAddress>());
        if (clock is not null)
        {
            builder.ConfigureTestServices(s => s.Replace(ServiceDescriptor.Singleton(clock)));
        }
    }
}

/// <summary>Lets a request say where it comes from, since in this process it comes from nowhere.</summary>
public sealed class RemoteAddress : IStartupFilter
{
    /// <summary>Header with the address.</summary>
    public const string Header = "X-Test-Remote";

    /// <inheritdoc/>
    public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) =>
        app =>
        {
            app.Use(
                (context, go) =>
                {
                    if (IPAddress.TryParse(context.Request.Headers[Header].ToString(), out var address))
                    {
                        context.Connection.RemoteIpAddress = address;
                    }

                    return go(context);
                }
            );
            next(app);
        };
}
