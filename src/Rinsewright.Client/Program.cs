using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Client;
using Rinsewright.Client.Machines;
using Rinsewright.Client.Records;
using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Shell;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddSingleton<IDevice, BrowserDevice>();
builder.Services.AddSingleton<IDeviceStore, BrowserStore>();
builder.Services.AddSingleton<IOffice, BrowserOffice>();
builder.Services.AddSingleton<IComputing, BrowserComputing>();
builder.Services.AddSingleton<Preferences>();
builder.Services.AddSingleton<LateParts>();
builder.Services.AddSingleton<Toasts>();
builder.Services.AddSingleton<Work>();
builder.Services.AddSingleton<Synchronizer>();
builder.Services.AddSingleton<ProofSession>();
builder.Services.AddSingleton<MachineShelf>();
builder.Services.AddSingleton<IModelling, BrowserModelling>();

var host = builder.Build();
await host.Services.GetRequiredService<Preferences>().LoadAsync();
await host.RunAsync();
