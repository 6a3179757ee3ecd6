using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.RateLimiting;
using ReedClinic.Data.Audit;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account;
using ReedClinic.Web.Features.Letters.Links;
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

    /// <summary>A new address or password, and opening the studio, from one address in an hour.</summary>
    public const string Links = "Limits:Links";

    /// <summary>Sounds and photographs that one account begins to send in an hour.</summary>
    public const string Uploads = "Limits:Uploads";

    /// <summary>Links to begin with, asked for or used from one address in an hour.</summary>
    public const string Begin = "Limits:Begin";

    /// <summary>Accounts asked for from one address in an hour.</summary>
    public const string SignUp = "Limits:SignUp";

    /// <summary>Accounts made by a link from one address in an hour.</summary>
    public const string Join = "Limits:Join";

    /// <summary>Guardians asked, and their answers, from one address in an hour.</summary>
    public const string Guardian = "Limits:Guardian";

    /// <summary>Forgotten passwords from one address in an hour.</summary>
    public const string Forgotten = "Limits:Forgotten";

    /// <summary>Letters, their files and sounds asked for by a private link from one address in an hour.</summary>
    public const string LetterLink = "Limits:LetterLink";

    // A class of 30 sits behind one address, and each of them may do the same within one lesson: ask for a link, ask again because
    // the mail is slow or the address was mistyped, use the link, and be refused a name or a password once or twice. That is five
    // forms at each door. Nothing is guessed at these doors (a link holds 256 random bits); what they could be misused for is
    // flooding a mailbox, and that has a limit of its own for each receiver, whoever asks: see StrangerLinks.MostInAnHour,
    // SignInBook.MostLinksAnHour and GuardianBook.MostAsksADay. Our own choice.
    private const int ClassOfThirty = 30 * 5;

    // The same class signs in at the beginning of a lesson, and mistypes once: guessing is slowed by the rest an account takes
    // after five wrong passwords.
    private const int ClassSigningIn = 30 * 2;

    // Each of them opens the letter a few times, its PDF, and plays its sounds, of which a browser asks for pieces. Nothing is
    // guessed there either: it is for whoever asks on and on.
    private const int ClassReading = 30 * 20;

    private const string Blank = "ReedClinic.BlankForm";

    /// <summary>Each door's own budget: its setting, how much there is unless that says otherwise, and for how long.</summary>
    private static readonly Dictionary<string, (int Usual, TimeSpan Window)> Budgets = new()
    {
        [SignIn] = (ClassSigningIn, TimeSpan.FromMinutes(5)),
        [Passkey] = (ClassSigningIn, TimeSpan.FromMinutes(5)),
        [Links] = (20, TimeSpan.FromHours(1)),
        [Begin] = (ClassOfThirty, TimeSpan.FromHours(1)),
        [SignUp] = (ClassOfThirty, TimeSpan.FromHours(1)),
        [Join] = (ClassOfThirty, TimeSpan.FromHours(1)),
        [Guardian] = (ClassOfThirty, TimeSpan.FromHours(1)),
        [Forgotten] = (ClassOfThirty, TimeSpan.FromHours(1)),
        [LetterLink] = (ClassReading, TimeSpan.FromHours(1)),
    };

    /// <summary>The settings of all budgets.</summary>
    public static IReadOnlyCollection<string> Settings => Budgets.Keys;

    private static readonly (string Path, string Limit)[] Doors =
    [
        ("/account/passkey", Passkey),
        ("/account/sign-in", SignIn),
        ("/account/code", SignIn),
        ("/account/again", SignIn),
        ("/account/password", SignIn),
        ("/account/codes", SignIn),
        ("/account/email", Links),
        ("/account/forgotten", Forgotten),
        ("/account/new-password", Links),
        ("/account/new-email", Links),
        ("/account/sign-up", SignUp),
        ("/first-run", Links),
        ("/join", Join),
        ("/begin", Begin),
        ("/guardian", Guardian),
    ];

    // At these an address is typed, and one that can't be any does nothing at all: it is told beside the field, and is no try.
    private static readonly string[] AskingForAddress = ["/account/sign-in", "/account/sign-up", "/account/forgotten", "/account/email", "/begin", "/guardian"];

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

    /// <summary>Turns away who knocks too often. Before it, a form is looked at that asks for nothing.</summary>
    /// <param name="app">The application.</param>
    public static void UseRateLimits(this WebApplication app)
    {
        app.Use(async (context, next) =>
        {
            if (await AsksForNothingAsync(context.Request).ConfigureAwait(false))
            {
                context.Items[Blank] = true;
            }

            await next(context).ConfigureAwait(false);
        });
        app.UseRateLimiter();
    }

    private static async Task<bool> AsksForNothingAsync(HttpRequest request)
    {
        if (!HttpMethods.IsPost(request.Method) || !AskingForAddress.Contains(request.Path.Value, StringComparer.OrdinalIgnoreCase))
        {
            return false;
        }

        try
        {
            if (!request.HasFormContentType)
            {
                return false;
            }

            var form = await request.ReadFormAsync(request.HttpContext.RequestAborted).ConfigureAwait(false);
            var email = form["Form.Email"].ToString();

            // A sign-in with anything in both fields costs the work of a password, whatever stands there.
            return request.Path.StartsWithSegments("/account/sign-in", StringComparison.OrdinalIgnoreCase)
                ? string.IsNullOrWhiteSpace(email) || string.IsNullOrEmpty(form["Form.Password"])
                : form.ContainsKey("Form.Email") && EmailAddress.ReadAny(email) is null;
        }
        catch (Exception odd) when (odd is InvalidDataException or BadHttpRequestException or InvalidOperationException)
        {
            return false; // a form that can't be read, or that another page has sent, is a try like any other
        }
    }

    private static RateLimitPartition<string> PartitionOf(HttpContext context, ConfigurationManager settings)
    {
        var door = context.Request.Path.StartsWithSegments(LetterLinkEndpoints.Path, StringComparison.OrdinalIgnoreCase) ? LetterLink
            : HttpMethods.IsPost(context.Request.Method) && !context.Items.ContainsKey(Blank)
            ? Doors.FirstOrDefault(door => context.Request.Path.StartsWithSegments(door.Path, StringComparison.OrdinalIgnoreCase)).Limit
            : null;
        var from = PlaceOf(context.Connection.RemoteIpAddress);
        if (door is not null && Budgets[door] is var (usual, window))
        {
            return Window($"{door} {from}", settings.GetValue(door, usual), window);
        }

        return IsUpload(context.Request)
            ? Window($"uploads {WhoOf(context, from)}", settings.GetValue(Uploads, 60), TimeSpan.FromHours(1))
            : RateLimitPartition.GetNoLimiter("free");
    }

    // Where one is begun; its pieces don't count.
    private static bool IsUpload(HttpRequest request) => HttpMethods.IsPost(request.Method)
        && (string.Equals(request.Path.Value?.TrimEnd('/'), RecordingEndpoints.Path, StringComparison.OrdinalIgnoreCase) || request.Path.StartsWithSegments(RecordingEndpoints.Path + "/add", StringComparison.OrdinalIgnoreCase));

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
