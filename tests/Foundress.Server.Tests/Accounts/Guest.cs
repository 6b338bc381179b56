using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Book.Journal;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Somebody with a browser of their own: it keeps cookies and says which page asks.</summary>
internal sealed class Guest : IDisposable
{
    private const string SessionCookie = "foundress";
    private const string DeviceCookie = "foundress-device";

    private readonly CookieContainer _cookies = new();
    private readonly HttpClient _http;
    private readonly Uri _site;

    public Guest(Uri site)
    {
        _site = site;
        _http = new HttpClient(new SocketsHttpHandler { CookieContainer = _cookies, Expect100ContinueTimeout = TimeSpan.FromMinutes(5) }) { BaseAddress = new Uri(site, "api/v1/") };
        _http.DefaultRequestHeaders.Add("Origin", site.GetLeftPart(UriPartial.Authority));
        _http.DefaultRequestHeaders.Add("Sec-Fetch-Site", "same-origin");
    }

    public HttpClient Http => _http;

    public Guid Id { get; private set; }

    public string Name { get; private set; } = "";

    /// <summary>The name of their device in entries.</summary>
    public string Device { get; private set; } = "";

    /// <summary>The secret of their device.</summary>
    public string? Secret => _cookies.GetCookies(_site)[DeviceCookie]?.Value;

    /// <summary>The cookies as a browser sends them.</summary>
    public string Cookies => _cookies.GetCookieHeader(_site);

    public bool HasSession => _cookies.GetCookies(_site)[SessionCookie] is { Expired: false };

    public void Take(JsonElement account)
    {
        Id = account.GetProperty("id").GetGuid();
        Name = account.GetProperty("name").GetString()!;
        Device = account.GetProperty("device").GetString() ?? "";
    }

    /// <summary>Somebody with the same device and no session, as when it has run out.</summary>
    public Guest ByDeviceAlone()
    {
        var guest = new Guest(_site) { Id = Id, Name = Name, Device = Device };
        guest._cookies.Add(_site, new Cookie(DeviceCookie, Secret!));
        return guest;
    }

    /// <summary>Somebody with the same session on no device.</summary>
    public Guest BySessionAlone()
    {
        var guest = new Guest(_site) { Id = Id, Name = Name };
        guest._cookies.Add(_site, new Cookie(SessionCookie, _cookies.GetCookies(_site)[SessionCookie]!.Value));
        return guest;
    }

    /// <summary>The same browser, after the server has come up at another port.</summary>
    public Guest MovedTo(Uri address)
    {
        var guest = new Guest(new UriBuilder(address) { Host = "127.0.0.1" }.Uri) { Id = Id, Name = Name, Device = Device };
        foreach (Cookie cookie in _cookies.GetCookies(_site))
            guest._cookies.Add(guest._site, new Cookie(cookie.Name, cookie.Value));
        return guest;
    }

    public Task<HttpResponseMessage> GetAsync(string path) => _http.GetAsync(path);

    public Task<HttpResponseMessage> DeleteAsync(string path) => _http.DeleteAsync(path);

    public Task<HttpResponseMessage> PostAsync(string path, object body) => _http.PostAsJsonAsync(path, body);

    public Task<HttpResponseMessage> PutAsync(string path, object body) => _http.PutAsJsonAsync(path, body);

    public async Task<JsonElement> ReadAsync(string path)
    {
        var answer = await _http.GetAsync(path);
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }

    public async Task<HttpResponseMessage> SendAsync(string operation, params Entry[] entries)
    {
        using var content = new ByteArrayContent(EntryJson.WriteMany(entries));
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        return await _http.PostAsync($"operations/{operation}/entries", content);
    }

    /// <summary>Begins to send entries, and goes on once the server waits for them and something else has happened.</summary>
    public Task<HttpResponseMessage> SendSlowlyAsync(string operation, Func<Task> meanwhile, params Entry[] entries) =>
        PostSlowlyAsync($"operations/{operation}/entries", meanwhile, EntryJson.WriteMany(entries));

    /// <summary>Begins to send something, and goes on once the server waits for it and something else has happened.</summary>
    public async Task<HttpResponseMessage> PostSlowlyAsync(string path, Func<Task> meanwhile, ReadOnlyMemory<byte> json)
    {
        using var content = new HeldContent(json, meanwhile);
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = content };
        // The server says "go on" when it begins to read, which is after it has looked at who asks.
        request.Headers.ExpectContinue = true;
        return await _http.SendAsync(request);
    }

    /// <summary>An entry in their name on their device.</summary>
    public Entry Entry(int number, string operation = "home") => Site.Entry(number, operation) with { Author = Name, Device = Device };

    public void Dispose() => _http.Dispose();
}
