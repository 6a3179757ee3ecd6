using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.RateLimiting;
using ReedClinic.Data.Audit;
using ReedClinic.Web.Account;
using ReedClinic.Web.Features.Recordings;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>
/// How often one address may knock, and one account may send a file. Beside it an account rests after five wrong passwords; a passkey is let in all the same.
/// OWASP ASVS 5.0: 2.4.1, 6.1.1, 6.3.1; 429 with Retry-After: RFC 6585, section 4.
/// </summary>
public static class RateLimits
{
    /// <summary>Sign-ins (passwords and codes) from one address in five minutes.</summary>
    public const string SignIn = "Limits:SignIn";

    /// <summary>Passkey sign-ins from one address in five minutes.</summary>
    public const string Passkey = "Limits:Passkey";

    /// <summary>Links asked for, used or tried from one address in an hour.</summary>
    public const string Links = "Limits:Links";

    /// <summary>Sounds and photographs that one account begins to send in an hour.</summary>
    public const string Uploads = "Limits:Uploads";

    private static readonly (string Path, string Limit)[] Doors =
    [
        ("/account/passkey", Passkey),
        ("/account/sign-in", SignIn),
        ("/account/code", SignIn),
        ("/account/again", SignIn),
        ("/account/password", SignIn),
        ("/account/codes", SignIn),
        ("/account/email", Links),
        ("/account/forgotten", Links),
        ("/account/new-password", Links),
        ("/account/new-email", Links),
        ("/account/sign-up", Links),
        ("/first-run", Links),
        ("/join", Links),
        ("/begin", Links),
        ("/guardian", Links),
    ];

    /// <summary>Reads the limits.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddRateLimits(this WebApplicationBuilder builder)
    {
        var settings = builder.Configuration;
        builder.Services.AddRateLimiter(limits =>
        {
            limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limits.OnRejected = TurnAwayAsync;
            limits.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context => PartitionOf(context, settings));
        });
    }

    private static RateLimitPartition<string> PartitionOf(HttpContext context, ConfigurationManager settings)
    {
        var door = HttpMethods.IsPost(context.Request.Method)
            ? Doors.FirstOrDefault(door => context.Request.Path.StartsWithSegments(door.Path, StringComparison.OrdinalIgnoreCase)).Limit
            : null;
        var from = PlaceOf(context.Connection.RemoteIpAddress);
        return door switch
        {
            null when IsUpload(context.Request) => Window($"uploads {WhoOf(context, from)}", settings.GetValue(Uploads, 60), TimeSpan.FromHours(1)),
            null => RateLimitPartition.GetNoLimiter("free"),
            SignIn => Window($"sign-in {from}", settings.GetValue(SignIn, 20), TimeSpan.FromMinutes(5)),
            Passkey => Window($"passkey {from}", settings.GetValue(Passkey, 60), TimeSpan.FromMinutes(5)),
            _ => Window($"links {from}", settings.GetValue(Links, 20), TimeSpan.FromHours(1)),
        };
    }

    // Where one is begun; its pieces don't count.
    private static bool IsUpload(HttpRequest request) => HttpMethods.IsPost(request.Method)
        && (request.Path == RecordingEndpoints.Path || request.Path.StartsWithSegments(RecordingEndpoints.Path + "/add", StringComparison.OrdinalIgnoreCase));

    private static string WhoOf(HttpContext context, string from) => context.User.Account()?.Value.ToString() ?? from;

    // Of IPv6 the first half: that is what one household is given, and it may call itself anything within (RFC 6177, RFC 7381).
    private static string PlaceOf(IPAddress? address) => address switch
    {
        null => "here",
        { IsIPv4MappedToIPv6: true } => address.MapToIPv4().ToString(),
        { AddressFamily: AddressFamily.InterNetworkV6 } => Convert.ToHexString(address.GetAddressBytes().AsSpan(0, 8)),
        _ => address.ToString(),
    };

    private static RateLimitPartition<string> Window(string key, int most, TimeSpan window) =>
        RateLimitPartition.GetFixedWindowLimiter(key, _ => new FixedWindowRateLimiterOptions { PermitLimit = most, Window = window });

    // The page that says so is written by whoever writes all such pages.
    private static async ValueTask TurnAwayAsync(OnRejectedContext rejected, CancellationToken ct)
    {
        var wait = rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromMinutes(1);
        rejected.HttpContext.Response.Headers.RetryAfter = ((int)Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
        await rejected.HttpContext.RequestServices.GetRequiredService<RefusalRegister>().NoteFloodAsync(ct).ConfigureAwait(false);
    }
}
