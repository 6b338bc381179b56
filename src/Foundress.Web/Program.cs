using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using Foundress.Book.Journal;
using Foundress.Book.Wording;
using Foundress.Web;
using Foundress.Web.Background;
using Foundress.Web.Forecasts;
using Foundress.Web.Pages;
using Foundress.Web.Shell;
using Foundress.Web.Store;
using Foundress.Web.Sync;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;

[assembly: SupportedOSPlatform("browser")]

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.RootComponents.Add<HeadOutlet>("head::after");

await Task.WhenAll(
    JSHost.ImportAsync(StoreModule.Name, "../js/store.js"),
    JSHost.ImportAsync(DeviceModule.Name, "../js/device.js"),
    JSHost.ImportAsync(LanguageModule.Name, "../js/language.js"),
    JSHost.ImportAsync(UpdateModule.Name, "../js/update.js"),
    JSHost.ImportAsync(WorkModule.Name, "../js/work.js"),
    JSHost.ImportAsync(CourseModule.Name, "../js/courses.js"));

// One user, one tab: everything lives as long as the page.
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddSingleton<IIdSource>(new TimeOrderedIds(TimeProvider.System));
var http = new HttpClient { BaseAddress = new Uri(builder.HostEnvironment.BaseAddress) };
http.DefaultRequestHeaders.AcceptLanguage.ParseAdd(Languages.Current.Code);
builder.Services.AddSingleton(http);
builder.Services.AddSingleton<IEntryStore, BrowserEntryStore>();
builder.Services.AddSingleton<IDevice, BrowserDevice>();
builder.Services.AddSingleton<BookSession>();
builder.Services.AddSingleton<DemoDoor>();
builder.Services.AddSingleton<SeasonShelf>();
builder.Services.AddSingleton<BackgroundWork>();
builder.Services.AddSingleton<ForecastShelf>();
builder.Services.AddSingleton<Foundress.Web.Pages.Controls.ControlShelf>();
builder.Services.AddSingleton<Microsoft.AspNetCore.Components.WebAssembly.Services.LazyAssemblyLoader>();
builder.Services.AddSingleton<DirtyForms>();
builder.Services.AddSingleton<AppUpdate>();
builder.Services.AddSingleton<UndoList>();
builder.Services.AddSingleton<IPacking, BrowserPacking>();
builder.Services.AddSingleton<BookServer>();
builder.Services.AddSingleton<Exchange>();

await builder.Build().RunAsync();
