namespace Foundress.Server.Accounts;

/// <summary>A one-time link's secret.</summary>
internal sealed record LinkForm(string Secret);
