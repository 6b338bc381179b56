using Microsoft.AspNetCore.Authorization;

namespace Foundress.Server.Security;

/// <summary>That the one who asks is what <see cref="AccessRules"/> asks for.</summary>
internal sealed class AccessRequirement : IAuthorizationRequirement;
