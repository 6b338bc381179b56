using System.Text.Json;
using System.Text.Json.Serialization;
using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>Source-generated JSON of what has to do with accounts.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, PropertyNameCaseInsensitive = false,
    RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true,
    Converters = [typeof(InWords<Role>), typeof(InWords<SignInWay>), typeof(InWords<SignInResult>)])]
[JsonSerializable(typeof(SignInForm))]
[JsonSerializable(typeof(PasskeySignInForm))]
[JsonSerializable(typeof(LinkForm))]
[JsonSerializable(typeof(JoinForm))]
[JsonSerializable(typeof(PasswordForm))]
[JsonSerializable(typeof(PasskeyForm))]
[JsonSerializable(typeof(DeviceForm))]
[JsonSerializable(typeof(InvitationForm))]
[JsonSerializable(typeof(RoleForm))]
[JsonSerializable(typeof(AccountReply))]
[JsonSerializable(typeof(LinkReply))]
[JsonSerializable(typeof(IReadOnlyList<DeviceLine>))]
[JsonSerializable(typeof(IReadOnlyList<PasskeyLine>))]
[JsonSerializable(typeof(OwnCalendar))]
[JsonSerializable(typeof(CalendarReply))]
[JsonSerializable(typeof(PeopleReply))]
[JsonSerializable(typeof(InvitationReply))]
[JsonSerializable(typeof(IReadOnlyList<SeenSignIn>))]
[JsonSerializable(typeof(IReadOnlyList<PassedOnLine>))]
internal sealed partial class AccountsJson : JsonSerializerContext;

/// <summary>An enumeration by its names, in lower case.</summary>
internal sealed class InWords<T>() : JsonStringEnumConverter<T>(JsonNamingPolicy.CamelCase, allowIntegerValues: false)
    where T : struct, Enum;
