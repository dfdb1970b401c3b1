using Microsoft.AspNetCore.HttpOverrides;
using Rinsewright.Server.Accounts;
using Rinsewright.Server.Demo;
using Rinsewright.Server.Records;
using Rinsewright.Server.Sanitization;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Hosting;

/// <summary>Puts the server together.</summary>
public static class ServerHost
{
    /// <summary>Builds the application from the command line, the environment and appsettings.json.</summary>
    /// <exception cref="StartRefusedException">A setting cannot be used, or the address is open to others and that is not allowed.</exception>
    public static WebApplication Build(string[] args)
    {
        var builder = WebApplication.CreateBuilder(args);
        builder.Configuration.Sources.Insert(
            0,
            new Microsoft.Extensions.Configuration.Memory.MemoryConfigurationSource { InitialData = ServerSettings.Defaults }
        );
        var settings = ServerSettings.From(builder.Configuration);
        var asked = Listening.Asked(builder.Configuration);
        Listening.RefuseOpen(asked, settings);
        if (asked.Count == 0)
        {
            builder.WebHost.UseUrls(ServerSettings.DefaultUrl);
        }

        builder.WebHost.UseStaticWebAssets(); // else a run from build output outside Development has no client files
        builder.AddLimits();
        builder.Services.AddSingleton(settings);
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddJson();
        builder.Services.AddProblems();
        builder.Services.AddAccounts();
        builder.Services.AddAccess();
        builder.Services.AddOpenApi(OpenApiText.Set);
        builder.Services.AddStore(settings);
        builder.Services.AddSingleton<OriginalFiles>();
        builder.Services.AddSingleton<LostFiles>();
        builder.Services.AddHostedService(s => s.GetRequiredService<LostFiles>());
        builder.Services.AddScoped<OperationLog>();
        builder.Services.AddScoped<ProofStore>();
        builder.Services.AddScoped<ChangeFeed>();
        builder.Services.AddScoped<DemoService>();

        var app = builder.Build();
        // The scheme a proxy on this computer was called by, so that behind HTTPS the cookie is for HTTPS alone. Whose address it names is not taken for the caller's here:
        // while there is no account, who comes through a proxy on this computer counts as being at it, as the handbook says.
        app.UseForwardedHeaders(new ForwardedHeadersOptions { ForwardedHeaders = ForwardedHeaders.XForwardedProto });
        app.UseSecurityHeaders();
        app.UseExceptionHandler();
        app.UseStatusCodePages();
        app.UseSameOrigin();
        app.UseClientPages();
        app.UseRouting();
        app.UseRequestTimeouts();
        app.UseRateLimiter();
        app.UseAuthentication();
        app.UseAuthorization();
        MapEndpoints(app);
        return app;
    }

    private static void MapEndpoints(WebApplication app)
    {
        app.MapGroup("").RequireAuthorization(Access.Door).MapStaticAssets(); // through a group, so that every endpoint it adds declares the policy
        var api = app.MapGroup("/api");
        api.MapSignIn();
        api.MapPasskeys();
        api.MapOwn();
        api.MapPeople();
        api.MapProof();
        api.MapOperations();
        api.MapProofs();
        api.MapFiles();
        api.MapDemo();
        app.MapHealth().RequireAuthorization(Access.Door);
        app.MapOpenApi().RequireAuthorization(Access.Door);
    }

    /// <summary>Opens the store, starts, says where it is, and runs until it is stopped.</summary>
    /// <exception cref="StartRefusedException">The data folder or database cannot be used, or the address is taken.</exception>
    public static async Task RunAsync(WebApplication app)
    {
        var settings = app.Services.GetRequiredService<ServerSettings>();
        var stopping = app.Lifetime.ApplicationStopping;
        DataFolder.Make(settings);
        await StoreOpening.OpenAsync(app.Services, settings, stopping);
        var yesterday = app.Services.GetRequiredService<TimeProvider>().GetUtcNow().AddDays(-1);
        app.Services.GetRequiredService<OriginalFiles>().RemoveParts(yesterday);
        if (settings.Demo)
        {
            await using var scope = app.Services.CreateAsyncScope();
            await scope.ServiceProvider.GetRequiredService<DemoService>().SeedOnceAsync(stopping);
        }

        var link = settings.InviteOffice ? await OfficeLink.MakeAsync(app.Services, stopping) : null;

        try
        {
            await app.StartAsync(stopping);
        }
        catch (IOException e) when (e.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            throw new StartRefusedException("server.start.address-taken", e, ("address", string.Join(", ", Asked(app))));
        }

        Listening.RefuseOpen(Addresses(app), settings); // what was really bound, should the configuration have said it in a way we do not read
        Console.WriteLine(
            settings.Words.Say("server.start.running", ("address", string.Join(", ", Addresses(app))), ("place", settings.StorePlace))
        );
        if (link is not null)
        {
            Console.WriteLine(settings.Words.Say("server.start.office-link", ("link", OfficeLink.At(Addresses(app).First(), link))));
        }

        await app.WaitForShutdownAsync();
    }

    // Where nothing could be bound there is no list of bound addresses.
    private static IReadOnlyList<string> Asked(WebApplication app) =>
        Listening.Asked(app.Configuration) is { Count: > 0 } asked ? asked : [ServerSettings.DefaultUrl];

    private static ICollection<string> Addresses(WebApplication app) =>
        ((IApplicationBuilder)app).ServerFeatures.Get<Microsoft.AspNetCore.Hosting.Server.Features.IServerAddressesFeature>()?.Addresses
        ?? [];
}
