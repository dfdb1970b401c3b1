using System.Text.Json.Serialization;
using Rinsewright.Contracts.Accounts;

namespace Rinsewright.Client.Accounts;

/// <summary>JSON of the accounts; here and not with the other contracts, because it comes late.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(WhoAmI))]
[JsonSerializable(typeof(NameAndPassword))]
[JsonSerializable(typeof(PasswordChange))]
[JsonSerializable(typeof(AccountChange))]
[JsonSerializable(typeof(IReadOnlyList<AccountView>))]
[JsonSerializable(typeof(IReadOnlyList<SessionView>))]
[JsonSerializable(typeof(IReadOnlyList<PasskeyView>))]
[JsonSerializable(typeof(PasskeyAnswer))]
[JsonSerializable(typeof(PasskeyQuestion))]
[JsonSerializable(typeof(InvitationWish))]
[JsonSerializable(typeof(IReadOnlyList<InvitationView>))]
[JsonSerializable(typeof(InvitationMade))]
[JsonSerializable(typeof(InvitationToken))]
[JsonSerializable(typeof(Invited))]
[JsonSerializable(typeof(Acceptance))]
[JsonSerializable(typeof(AuditPage))]
public sealed partial class AccountsJson : JsonSerializerContext;
