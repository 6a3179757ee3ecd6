using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>
/// A passkey that signs as an authenticator does: W3C Web Authentication Level 3, 6.1 (authenticator data), 5.8.1 (client data),
/// 6.5.5 (signatures); RFC 9053, 2.1 and 7.1 (ES256 keys in COSE).
/// </summary>
internal sealed class SoftPasskey : IDisposable
{
    /// <summary>Where it is asked, as a browser says it with the form and in what is signed.</summary>
    public const string Origin = "https://localhost";

    private const byte PresentAndVerified = 0x05;

    private readonly ECDsa _key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
    private readonly byte[] _id = RandomNumberGenerator.GetBytes(16);
    private readonly AccountId _account;

    private SoftPasskey(AccountId account) => _account = account;

    /// <summary>Gives an account such a passkey.</summary>
    public static async Task<SoftPasskey> AddAsync(ClinicHost host, AccountId account)
    {
        var passkey = new SoftPasskey(account);
        var known = new UserPasskeyInfo(passkey._id, passkey.Cose(), TimeProvider.System.GetUtcNow(), 0, ["internal"], true, false, false, [4], [5]);
        await using var scope = host.Services.CreateAsyncScope();
        Assert.IsType<Outcome<AccountId>.Done>(await scope.ServiceProvider.GetRequiredService<PasskeyBook>()
            .AddAsync(new Actor(account, null, false, false) { IsFresh = true }, known, "phone", Parcel.NewOperation(), TestContext.Current.CancellationToken));
        return passkey;
    }

    /// <summary>Signs what the server asks, as its options tell.</summary>
    public string Sign(string options)
    {
        using var asked = JsonDocument.Parse(options);
        var said = asked.RootElement;
        var client = JsonSerializer.SerializeToUtf8Bytes(new { type = "webauthn.get", challenge = said.GetProperty("challenge").GetString(), origin = Origin, crossOrigin = false });
        byte[] data = [.. SHA256.HashData(Encoding.UTF8.GetBytes(said.GetProperty("rpId").GetString()!)), PresentAndVerified, 0, 0, 0, 0];
        var signature = _key.SignData([.. data, .. SHA256.HashData(client)], HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence);
        return JsonSerializer.Serialize(new
        {
            id = Text(_id),
            rawId = Text(_id),
            type = "public-key",
            clientExtensionResults = new { },
            response = new { clientDataJSON = Text(client), authenticatorData = Text(data), signature = Text(signature), userHandle = Text(Encoding.UTF8.GetBytes(_account.Value.ToString())) },
        });
    }

    public void Dispose() => _key.Dispose();

    private static string Text(byte[] bytes) => Base64Url.EncodeToString(bytes);

    // A map of five: kty EC2, alg ES256, crv P-256, x, y.
    private byte[] Cose()
    {
        var point = _key.ExportParameters(includePrivateParameters: false).Q;
        return [0xA5, 0x01, 0x02, 0x03, 0x26, 0x20, 0x01, 0x21, 0x58, 0x20, .. point.X!, 0x22, 0x58, 0x20, .. point.Y!];
    }
}
