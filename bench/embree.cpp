/**
 * The reference for bench/rays.mjs: the same rays through Intel Embree 3 (Debian: libembree-dev), one thread, one ray a
 * call. Reads the mesh and the rays from two files, prints one line of JSON. Times are sums over slices of the rays, of
 * each the fastest of the repeats.
 *
 * mesh: int32 vertices, int32 triangles, f32 xyz a vertex, u32 three a triangle.
 * rays: int32 sets, int32 rays a set, then f64 origin, direction, tMin, tMax a ray.
 */
#include <embree3/rtcore.h>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <numeric>
#include <pmmintrin.h>
#include <vector>
#include <xmmintrin.h>

using Clock = std::chrono::steady_clock;

static double since(Clock::time_point from) {
  return std::chrono::duration<double>(Clock::now() - from).count();
}

template <class T> static std::vector<T> read(FILE *file, size_t n) {
  std::vector<T> data(n);
  if (fread(data.data(), sizeof(T), n, file) != n) {
    fprintf(stderr, "The file is too short.\n");
    exit(1);
  }
  return data;
}

int main(int argc, char **argv) {
  if (argc != 5) {
    fprintf(stderr, "embree MESH RAYS REPEATS SLICE\n");
    return 2;
  }
  // As Embree's manual advises.
  _MM_SET_FLUSH_ZERO_MODE(_MM_FLUSH_ZERO_ON);
  _MM_SET_DENORMALS_ZERO_MODE(_MM_DENORMALS_ZERO_ON);
  const int repeats = atoi(argv[3]);
  FILE *file = fopen(argv[1], "rb");
  if (!file) return 1;
  auto head = read<int>(file, 2);
  auto xyz = read<float>(file, size_t(head[0]) * 3);
  auto corners = read<unsigned>(file, size_t(head[1]) * 3);
  fclose(file);

  RTCDevice device = rtcNewDevice("threads=1");
  RTCScene scene = rtcNewScene(device);
  RTCGeometry mesh = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_TRIANGLE);
  void *to = rtcSetNewGeometryBuffer(mesh, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 12, head[0]);
  std::copy(xyz.begin(), xyz.end(), static_cast<float *>(to));
  to = rtcSetNewGeometryBuffer(mesh, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 12, head[1]);
  std::copy(corners.begin(), corners.end(), static_cast<unsigned *>(to));
  auto begun = Clock::now();
  rtcCommitGeometry(mesh);
  rtcAttachGeometry(scene, mesh);
  rtcCommitScene(scene);
  printf("{\"build_s\":%.4f,\"sets\":[", since(begun));

  file = fopen(argv[2], "rb");
  if (!file) return 1;
  head = read<int>(file, 2);
  for (int set = 0; set < head[0]; set++) {
    const int n = head[1];
    auto rays = read<double>(file, size_t(n) * 8);
    const int slice = atoi(argv[4]), slices = n / slice;
    std::vector<double> first(slices, INFINITY), any(slices, INFINITY);
    double sum = 0;
    int hits = 0, blocked = 0;
    for (int k = 0; k < repeats; k++) {
      hits = blocked = 0;
      sum = 0;
      for (int s = 0; s < slices; s++) {
        begun = Clock::now();
        for (int i = s * slice; i < (s + 1) * slice; i++) {
          const double *r = &rays[size_t(i) * 8];
          RTCRayHit ray = {};
          ray.ray.org_x = r[0], ray.ray.org_y = r[1], ray.ray.org_z = r[2];
          ray.ray.dir_x = r[3], ray.ray.dir_y = r[4], ray.ray.dir_z = r[5];
          ray.ray.tnear = r[6], ray.ray.tfar = r[7], ray.ray.mask = -1;
          ray.hit.geomID = RTC_INVALID_GEOMETRY_ID;
          RTCIntersectContext context;
          rtcInitIntersectContext(&context);
          rtcIntersect1(scene, &context, &ray);
          if (ray.hit.geomID == RTC_INVALID_GEOMETRY_ID) continue;
          hits++;
          sum += ray.ray.tfar;
        }
        first[s] = std::min(first[s], since(begun));
        begun = Clock::now();
        for (int i = s * slice; i < (s + 1) * slice; i++) {
          const double *r = &rays[size_t(i) * 8];
          RTCRay ray = {};
          ray.org_x = r[0], ray.org_y = r[1], ray.org_z = r[2];
          ray.dir_x = r[3], ray.dir_y = r[4], ray.dir_z = r[5];
          ray.tnear = r[6], ray.tfar = r[7], ray.mask = -1;
          RTCIntersectContext context;
          rtcInitIntersectContext(&context);
          rtcOccluded1(scene, &context, &ray);
          blocked += ray.tfar < 0;
        }
        any[s] = std::min(any[s], since(begun));
      }
    }
    printf("%s{\"first_s\":%.5f,\"any_s\":%.5f,\"hits\":%d,\"blocked\":%d,\"sum\":%.6f}", set ? "," : "",
           std::accumulate(first.begin(), first.end(), 0.0), std::accumulate(any.begin(), any.end(), 0.0), hits, blocked,
           sum);
  }
  printf("]}\n");
  fclose(file);
}
